"""Nouns that own, nouns that are owned, and nouns that stand as plurals before another; all from memory."""

from __future__ import annotations

from fairhand.copyedit.grammar.counted import PERSONS

OWNERS = PERSONS | frozenset(
    "audience army bishop candidate caretaker city colony committee company country county customer daughter"
    " defendant emperor empire employee father family filmmaker government governor grandfather grandmother hero"
    " heroine husband industry institution king lady landowner lord mayor monarch monk nation narrator nun nurse"
    " parish philosopher playwright ministry president prince princess protagonist queen researcher society"
    " speaker state sculptor therapist town tribe tyrant university village voter wife widow workman duke earl"
    " parent brother sister uncle aunt client inmate lawyer surgeon baby infant animal bird horse dog cat hunter"
    " peasant tenant composer dancer essayist filmgoer geologist biologist chemist physicist engineer architect"
    " captain crew clerk judge jury church century generation community shark whale bat wolf lion bear fox seal"
    " elephant monkey cow spider bee colleague individual person neighbourhood household corporation enemy rival"
    " opponent world earth sun moon kingdom republic director professor prophet host chef chief pope detective"
    " suspect knight butcher baker pastor preacher dean bride groom boss founder lover hermit beggar stranger"
    " thief murderer killer heir niece nephew cousin grandson granddaughter mechanic farmer pupil buyer ruler"
    " rebel pirate soldier sergeant general admiral manufacturer character driver adult applicant athlete"
    " comedian dealer debtor donor graduate guard healer hiker jogger juror learner mentor mourner peer"
    " philanthropist publisher rider roommate sitter smoker spouse toddler trainer trustee vendor warrior".split()
)
"""Those that may own: persons, what acts as one, places and times."""
WORKS = frozenset(
    "novel book poem film essay article chapter story text speech painting sonnet ballad song drama narrative"
    " letter report study theory paper argument".split()
)
"""Works, which own a few things only (``OF_WORKS``); their plurals are often attributes."""
OF_WORKS = frozenset(
    "author authors title plot ending character characters stanza chapter chapters scene line lines meaning theme"
    " themes narrator structure opening style conclusion conclusions hero heroine protagonist argument tone"
    " popularity success message setting language strength strengths weakness weaknesses thesis".split()
)
INSTITUTIONS = frozenset(
    "team school hospital court museum library firm bank band club church factory newspaper magazine parliament"
    " ship program programme project scheme".split()
)
"""Their plurals are attributes too (*the schools inspector*), so that they own a few things only."""
OF_INSTITUTIONS = frozenset(
    "budget decision coach director owner owners history founder founders reputation staff collection ruling roof"
    " rules mission success failure manager headmaster captain crew leader leaders aim aims goal goals readers"
    " purpose".split()
)
BODIES = frozenset(
    "association agency academy affairs alliance board bureau building camp center centre church class club"
    " college colony commission committee company compensation conference congress convention convent cooperative"
    " corps council day department division district edition exhibition federation festival forum foundation fund"
    " game group guild guide guilds hall home hospital hostel house institute journal league lounge market"
    " markets meeting ministry movement museum network office officer officers organization organisation"
    " organizations organisations panel park party parties program programme project prize register relations"
    " school schools scheme section seminar service services shelter site society societies station store strike"
    " strikes summit team teams training tribunal union unions village vote ward week wing workshop workshops".split()
)
"""What is named after those that it is for, so that the plural may stand before it: *a teachers college*."""
GIVING = frozenset(
    "give gives gave given giving grant grants granted granting offer offers offered offering show shows showed"
    " shown showing teach teaches taught teaching tell tells told telling send sends sent sending lend lends lent"
    " cost costs costing pay pays paid paying call calls called calling make makes made making consider considers"
    " considered considering deem deems deemed name names named elect elects elected bring brings brought"
    " bringing buy buys bought allow allows allowed allowing deny denies denied denying owe owes owed owing"
    " promise promises promised ask asks asked asking hand hands handed feed fed feeds read reads let lets help"
    " helps helped helping see sees saw hear hears heard watch watched watches have had has assign assigned"
    " assigns provide provides provided find finds found think thought thinks believe believes believed render"
    " renders rendered leave leaves left keep keeps kept save take takes took taken taking hold holds held saves"
    " saved spare spared win won wins set sets write writes wrote".split()
)
"""Verbs that two nouns may follow: *it gave the farmers money*."""
SAYING = frozenset(
    "say think believe know find argue suggest mean claim see note hope feel report show prove state conclude"
    " imagine suppose assume admit agree insist notice observe learn hear remember understand realise realize"
    " fear wish guarantee ensure demonstrate indicate imply reveal explain add predict expect decide discover"
    " forget".split()
)
"""Verbs that a whole clause may follow with no *that*: *he says the authors work*."""
TIMES = frozenset("minutes hours days nights weeks months years decades moments".split())
IN_WHOSE = frozenset(
    "view opinion mind case eyes words absence presence favour favor shoes perspective lifetime honour honor".split()
)
"""What stands after a preposition and its owner: *in the poet's view*."""
OF_PEOPLE = frozenset(
    "lives minds hands homes brains eyes faces opinions attitudes health behaviour behavior views beliefs"
    " feelings money houses jobs needs privacy safety bodies choices perceptions thoughts attention trust rights"
    " life".split()
)
"""What people have: *in people's minds*."""
GREATEST_OF = frozenset(
    "world nation country city town state company industry century kingdom region continent".split()
)
"""What the greatest of a kind belongs to: *the world's largest lake*."""
OF_TIMES = frozenset(
    "experience notice worth time pay wages salary imprisonment leave rest sleep drive walk journey delay credit"
    " supply labour labor training negotiation travel practice service absence holiday work thought study reading"
    " effort research ride march sail".split()
)
"""What is measured by time with an apostrophe: *two weeks' notice*."""
