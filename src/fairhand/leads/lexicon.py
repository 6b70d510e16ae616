"""Words that tell of themselves which field of a reference they stand in: the model knows these and no others.

What people, journals and works are called is not in it; a name is told by its form and its place.
**Source**: the wording of the style manuals; ISO 4 for the abbreviated words of titles; common geography.
"""

from __future__ import annotations

MONTHS = frozenset(
    "january february march april may june july august september october november december jan feb mar apr jun jul "
    "aug sep sept oct nov dec spring summer autumn fall winter janvier février mars avril mai juin juillet août "
    "septembre octobre novembre décembre januar februar märz juni juli oktober dezember enero febrero marzo abril "
    "mayo junio julio agosto septiembre octubre noviembre diciembre".split()
)
"""Months and seasons, as dates have them."""

PLAIN = frozenset(
    "a an the of and in on for to with by from at as is or its et al und der die das für von zu im zur de la le les "
    "des du dans pour sur el los las y en del un une una da do dos e il per dei delle not how why what who whose "
    "when where are be can do does into under between among over after before during through towards toward via "
    "versus vs without within using against about beyond some new this that these their our".split()
)
"""Small words, which a title has and a name has not."""

STRUCTURE = frozenset(
    "eds ed editor editors hrsg hg edited editorial trans translated translator translators übers comp compiled "
    "dir vol vols volume volumes band bd bde tome t no nos nr num number issue iss heft pt part parts pp p pg pgs "
    "page pages s seiten chap chapter ch art article edn edition editions rev revised rd nd th st retrieved accessed "
    "available online press forthcoming submitted appear preprint print reprint reprinted originally published "
    "unpublished manuscript draft mimeo personal communication phd dphil ph d msc ma md thesis theses dissertation "
    "doctoral doctorate masters diplomarbeit habilitation report reports technical tech tr memo memorandum working "
    "paper papers discussion bulletin white series lecture notes monograph monographs supplement suppl sup special "
    "patent standard rfc draft version release dept department departments school faculty lab laboratory "
    "laboratories center centre institute institut institution academy college univ university université "
    "universität universidad universidade universita corp corporation inc ltd llc gmbh co company sons bros agency "
    "ministry council association society office bureau government commission committee organization organisation "
    "foundation library verlag éditions editorial books publishers publisher publishing publications publ pub "
    "press presses proceedings proc conference conf congress symposium symp workshop colloquium meeting annual "
    "international int intl national natl european american asian world joint th conference transactions trans "
    "journal j jour jnl journals rev review reviews revista revue zeitschrift zeit archiv archives arch annals ann "
    "annales annalen annual advances adv acta bull bulletin letters lett magazine mag quarterly quart q studies "
    "stud research res science sciences sci ser sér phys physics physica physical chem chemistry chemical biol "
    "biology math mathematics mathematical comput computer computing comp med medicine medical clin clinical soc "
    "social acad eng engineering environ econ economics psychol psychology hist history educ education lang "
    "linguist philos polit policy law surg pharm pharmacol biochem cell mol molecular genet genetics nat nature "
    "neurosci neurol ecol geol geophys astron astrophys mater appl applied theor theory exp experimental syst "
    "systems software inf information artif intell intelligence cogn am brit br j eur can aust jpn nucl opt mech "
    "struct dyn anal stat statist fluid heat energy power electr electron ieee acm springer elsevier wiley "
    "routledge oxford cambridge mit sage arxiv biorxiv pmid pmc pmcid issn isbn doi url http https hal url cited "
    "quoted see also cf ibid op cit here urldate lncs llncs".split()
)
"""Words of the apparatus of references, and the usual words of journals, bodies and publishers, some abbreviated."""

PLACES = frozenset(
    "london paris berlin york boston chicago oxford cambridge amsterdam dordrecht leiden rotterdam utrecht delft hague "
    "heidelberg munich münchen stuttgart frankfurt leipzig hamburg cologne köln bonn göttingen tübingen dresden "
    "vienna wien zurich zürich basel bern geneva genève lausanne rome roma milan milano turin torino florence firenze "
    "bologna pisa padua venice naples madrid barcelona valencia seville lisbon porto dublin edinburgh glasgow cardiff "
    "belfast manchester birmingham bristol leeds sheffield liverpool nottingham durham aberdeen brussels bruxelles "
    "louvain leuven ghent antwerp liège copenhagen københavn aarhus stockholm uppsala lund gothenburg oslo bergen "
    "trondheim helsinki turku tampere warsaw kraków prague praha brno budapest bucharest sofia belgrade zagreb "
    "ljubljana athens thessaloniki istanbul ankara moscow petersburg kiev tel aviv jerusalem haifa cairo tunis lagos "
    "nairobi johannesburg pretoria delhi mumbai bombay calcutta madras bangalore hyderabad singapore bangkok manila "
    "jakarta hanoi beijing shanghai guangzhou nanjing wuhan taipei hong kong seoul busan tokyo kyoto osaka nagoya "
    "sapporo sydney melbourne canberra brisbane adelaide perth auckland wellington toronto montreal montréal ottawa "
    "vancouver calgary edmonton waterloo québec mexico bogotá lima santiago buenos aires rio janeiro são paulo "
    "havana washington philadelphia baltimore pittsburgh princeton haven ithaca rochester syracuse albany providence "
    "amherst hanover durham chapel hill raleigh charlottesville richmond norfolk atlanta athens gainesville miami "
    "orlando tampa tallahassee nashville memphis knoxville louisville lexington cincinnati cleveland columbus detroit "
    "arbor lansing bloomington indianapolis lafayette urbana champaign madison milwaukee minneapolis paul iowa ames "
    "louis kansas lawrence lincoln omaha denver boulder collins dallas austin houston antonio orleans baton rouge "
    "tucson phoenix tempe albuquerque santa fe los alamos angeles diego san francisco berkeley stanford palo alto "
    "menlo park davis irvine pasadena monterey barbara cruz clara jose oakland sacramento portland eugene corvallis "
    "seattle honolulu anchorage salt lake city logan boise englewood cliffs upper saddle river reading hoboken "
    "hillsdale mahwah thousand oaks norwell philadelphia usa u.s.a uk england scotland wales ireland france germany "
    "italy spain portugal netherlands holland belgium switzerland austria sweden norway denmark finland poland "
    "hungary greece turkey russia ukraine israel india china japan korea taiwan thailand vietnam malaysia indonesia "
    "australia zealand canada brazil argentina chile colombia egypt nigeria kenya africa california massachusetts "
    "pennsylvania illinois michigan texas virginia maryland connecticut jersey ohio indiana wisconsin minnesota "
    "oregon colorado arizona utah florida georgia carolina tennessee kentucky alabama louisiana missouri hawaii "
    "ontario quebec alberta britain kingdom states mass calif conn penn ill mich".split()
)
"""Towns, states and countries in which works are often published or conferences held, word by word."""

STATES = frozenset(
    "AL AK AZ AR CA CO CT DE FL GA HI ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC ND OH OK OR "
    "PA RI SC SD TN TX UT VT VA WA WV WI WY DC BC ON QC AB UK USA".split()
)
"""Short forms of states and countries."""
