"""Words that invented records are made of: common names, common words of titles, made-up words, towns, bodies.

All of it is written for this purpose, or put together from syllables by a seeded generator; no data set stands behind
it. Given names and surnames are common ones of many countries, joined at random.
"""

from __future__ import annotations

import random

SURNAMES = (
    "Smith Jones Brown Taylor Wilson Davies Evans Thomas Johnson Roberts Walker Wright Robinson Thompson White Hughes "
    "Edwards Green Hall Wood Harris Lewis Martin Jackson Clarke Clark Turner Hill Cooper Ward Moore Morris King "
    "Watson Baker Morgan Patel Young Allen Mitchell James Anderson Phillips Lee Bell Parker Davis Bennett Miller Cook "
    "Shaw Carter Collins Murphy Gray Kelly Simpson Marshall Price Bailey Adams Cox Foster Powell Rose Hunt Stone Day "
    "Long Small Rich Winter Summers Rivers Fields Brooks Banks Park May Page Law Read Love Reader Case Chase Fox "
    "Müller Schmidt Schneider Fischer Weber Meyer Wagner Becker Schulz Hoffmann Koch Bauer Richter Klein Wolf "
    "Schröder Neumann Schwarz Zimmermann Krüger Hartmann Lange Krause Lehmann Köhler Herrmann König Kaiser Huber "
    "Dubois Moreau Laurent Lefebvre Roux Fournier Girard Bonnet Dupont Lambert Rousseau Leclerc Gauthier Chevalier "
    "Rossi Ferrari Russo Bianchi Romano Gallo Conti Ricci Marino Greco Lombardi Moretti Barbieri Fontana Rinaldi "
    "García Martínez López Sánchez González Pérez Rodríguez Fernández Gómez Díaz Álvarez Moreno Muñoz Romero Navarro "
    "Silva Santos Ferreira Pereira Oliveira Costa Rodrigues Martins Jesus Sousa Fernandes Gonçalves Gomes Lopes "
    "Jansen Visser Bakker Dekker Mulder Bos Peters Hendriks Janssen Vermeulen Claes Maes Willems Peeters "
    "Hansen Johansen Olsen Larsen Andersen Pedersen Nilsen Kristiansen Berg Haugen Johansson Andersson Karlsson "
    "Nilsson Eriksson Lindberg Lindqvist Bergström Sandberg Korhonen Virtanen Mäkinen Nieminen Heikkinen Laine "
    "Novák Svoboda Dvořák Kučera Kowalski Wiśniewski Wójcik Kamiński Lewandowski Zieliński Nagy Kovács Szabó Tóth "
    "Horváth Popescu Ionescu Petrov Ivanov Smirnov Kuznetsov Popov Volkov Sokolov Papadopoulos Nikolaidis Yılmaz "
    "Kaya Demir Şahin Cohen Levy Mizrahi Peretz Khan Ahmed Ali Hussain Rahman Chowdhury Singh Kumar Sharma Gupta "
    "Mehta Rao Reddy Iyer Nair Banerjee Mukherjee Das Ghosh Wang Li Zhang Liu Chen Yang Huang Zhao Wu Zhou Xu Sun Ma "
    "Zhu Hu Guo He Lin Luo Tang Tan Wong Chan Lam Ng Ho Cheung Kim Lee Park Choi Jung Kang Cho Yoon Jang Lim Sato "
    "Suzuki Takahashi Tanaka Watanabe Ito Yamamoto Nakamura Kobayashi Kato Yoshida Yamada Sasaki Mori Abe Ueda Oka "
    "Nguyen Tran Pham Hoang Vo Okafor Adeyemi Mensah Boateng Diallo Traoré Ndlovu Dlamini Mwangi Otieno Abebe Tesfaye "
    "O'Brien O'Neill O'Connor McDonald McKay McCarthy MacLeod FitzGerald D'Angelo D'Souza L'Hermite St. Clair "
    "Smith-Jones Garcia-Molina Levi-Strauss Abu-Bakr El-Sayed Al-Rashid Ben-Ari Saint-Martin Moto-oka Perez-Soler"
).split()
GIVEN = (
    "James John Robert Michael William David Richard Joseph Thomas Charles Mary Patricia Linda Barbara Elizabeth "
    "Jennifer Maria Susan Margaret Dorothy Lisa Nancy Karen Betty Helen Sandra Donna Carol Ruth Sharon Peter Paul Mark "
    "George Kenneth Andrew Steven Edward Brian Ronald Anthony Kevin Jason Matthew Gary Timothy Larry Jeffrey Frank "
    "Scott Eric Stephen Raymond Gregory Joshua Jerry Dennis Walter Patrick Harold Douglas Henry Carl Arthur Ryan Hans "
    "Klaus Jürgen Wolfgang Heinrich Ulrich Günter Dieter Stefan Andreas Jean Pierre Michel Jacques Philippe André "
    "François Claude Marie Anne Catherine Sylvie Isabelle Marco Giovanni Luca Paolo Francesco Giulia Chiara José Juan "
    "Carlos Luis Miguel Antonio Ana Carmen Pilar João Pedro Paulo Rui Lars Erik Anders Björn Ingrid Astrid Mikko "
    "Jukka Pekka Tomasz Piotr Jan Jiří Pavel Ivan Sergei Dmitri Olga Natalia Elena Yusuf Mehmet Ayşe Moshe Avi Yael "
    "Ahmed Mohamed Omar Fatima Leila Rajesh Anil Sunita Priya Vijay Wei Jing Ming Xiaoming Yong Hui Kenji Hiroshi "
    "Takeshi Yuki Haruko Min-jun Seung-ho Thanh Chidi Ngozi Kwame Abena Wanjiru Siobhan Fiona Gwen Dafydd Rosalind"
).split()
PARTICLES = "van,de,von,der,van der,van den,de la,della,di,du,le,ten,el,al,bin,dos,da,von der".split(",")

NOUNS = (
    "analysis approach model method theory study evidence effect role history culture society language memory power "
    "identity community education policy practice development change growth structure system network process design "
    "evaluation performance learning algorithm data information knowledge language logic program software database "
    "query search control optimization estimation detection recognition classification simulation architecture "
    "protocol memory cache parallelism scheduling synthesis verification semantics representation inference reasoning "
    "vision speech text retrieval image pattern signal noise feature field surface layer film crystal alloy metal "
    "energy density temperature pressure flow wave particle plasma quantum spin magnet photon laser scattering decay "
    "mass matter gravity cosmology galaxy star planet climate ocean soil forest species habitat population evolution "
    "gene protein enzyme receptor cell tissue blood heart brain liver cancer infection virus bacteria antibody vaccine "
    "disease patient treatment therapy trial risk mortality diagnosis surgery pain sleep stress diet obesity exercise "
    "child family woman men youth worker teacher student nurse physician migrant citizen voter household village city "
    "region nation empire war peace revolution reform law justice right democracy election party state government "
    "market trade price wage labour capital money bank debt tax income poverty inequality welfare industry firm "
    "innovation technology machine factory railway harbour river bridge road island coast border house garden street "
    "church religion ritual myth magic art music song novel poem poetry drama theatre film painting museum archive "
    "library letter book reading writing grammar syntax meaning metaphor narrative rhetoric argument discourse gender "
    "race class body mind emotion attention perception behaviour attitude belief motivation decision choice game trust "
    "conflict cooperation communication media newspaper television internet privacy security measurement survey scale "
    "test validity sample distribution regression equation integral matrix graph tree set function space group ring "
    "manifold operator kernel bound complexity approximation convergence stability equilibrium dynamics turbulence "
    "instability transition boundary interface reactor circuit antenna sensor robot vehicle aircraft engine fuel "
    "water food rice wheat fish bird insect mammal fossil sediment rock mineral earthquake volcano glacier"
).split()
PLURAL = "s"
ADJECTIVES = (
    "new social political economic cultural historical modern early late medieval ancient colonial urban rural local "
    "global national international public private religious moral legal visual verbal oral written digital virtual "
    "cognitive emotional clinical medical genetic molecular cellular neural visual spatial temporal dynamic static "
    "linear nonlinear stochastic optimal robust adaptive distributed parallel concurrent sequential logical formal "
    "functional relational object-oriented knowledge-based real-time large-scale high-temperature low-energy "
    "time-dependent two-dimensional three-dimensional long-term cross-cultural non-invasive fast efficient effective "
    "simple complex general partial strong weak deep recurrent hidden latent Bayesian Gaussian Markov Fourier Hilbert "
    "magnetic electric optical thermal acoustic chemical physical biological ecological marine tropical arctic chronic "
    "acute human animal female male young old elderly Victorian Roman Greek British American European African Asian "
    "Chinese Japanese Indian French German Russian Atlantic Mediterranean comparative quantitative qualitative "
    "empirical experimental theoretical numerical statistical systematic multiple single common rare critical "
    "incremental hierarchical semantic syntactic statistical unsupervised supervised automatic interactive"
).split()
VERBS = (
    "understanding measuring teaching reading writing making building modelling estimating predicting learning solving "
    "improving exploring rethinking governing mapping counting managing finding detecting testing comparing inventing "
    "remembering imagining programming computing scheduling planning designing using applying extending combining"
).split()
JOURNAL_FIELDS = (
    "Physics Chemistry Biology Mathematics Medicine Psychology History Economics Education Linguistics Philosophy "
    "Sociology Anthropology Geography Geology Ecology Genetics Neurology Surgery Pharmacology Biochemistry Astronomy "
    "Engineering Computing Statistics Policy Law Ethics Management Nursing Psychiatry Pediatrics Oncology Cardiology "
    "Radiology Immunology Virology Microbiology Botany Zoology Entomology Archaeology Literature Music Theology "
    "Politics Communication Marketing Finance Accounting Agriculture Forestry Hydrology Meteorology Oceanography "
    "Optics Acoustics Mechanics Thermodynamics Electronics Robotics Informatics Logic Cybernetics Endocrinology"
).split()
ABBREVIATED = {
    "Physics": "Phys.",
    "Chemistry": "Chem.",
    "Biology": "Biol.",
    "Mathematics": "Math.",
    "Medicine": "Med.",
    "Psychology": "Psychol.",
    "History": "Hist.",
    "Economics": "Econ.",
    "Education": "Educ.",
    "Linguistics": "Linguist.",
    "Philosophy": "Philos.",
    "Engineering": "Eng.",
    "Computing": "Comput.",
    "Statistics": "Stat.",
    "Surgery": "Surg.",
    "Pharmacology": "Pharmacol.",
    "Biochemistry": "Biochem.",
    "Genetics": "Genet.",
    "Neurology": "Neurol.",
    "Immunology": "Immunol.",
    "Astronomy": "Astron.",
    "Geology": "Geol.",
    "Ecology": "Ecol.",
    "Oncology": "Oncol.",
    "Mechanics": "Mech.",
    "Optics": "Opt.",
    "Journal": "J.",
    "Review": "Rev.",
    "Reviews": "Rev.",
    "Letters": "Lett.",
    "Annals": "Ann.",
    "Bulletin": "Bull.",
    "Transactions": "Trans.",
    "Proceedings": "Proc.",
    "Archives": "Arch.",
    "International": "Int.",
    "American": "Am.",
    "European": "Eur.",
    "British": "Br.",
    "Applied": "Appl.",
    "Research": "Res.",
    "Science": "Sci.",
    "Sciences": "Sci.",
    "Society": "Soc.",
    "Studies": "Stud.",
    "Quarterly": "Q.",
    "Advances": "Adv.",
    "Clinical": "Clin.",
    "Experimental": "Exp.",
    "Theoretical": "Theor.",
    "Molecular": "Mol.",
    "Communications": "Commun.",
    "Materials": "Mater.",
    "Academy": "Acad.",
    "National": "Natl.",
    "Systems": "Syst.",
    "Social": "Soc.",
    "Association": "Assoc.",
    "Canadian": "Can.",
    "Nuclear": "Nucl.",
    "Chemical": "Chem.",
    "Physical": "Phys.",
    "Computer": "Comput.",
    "Software": "Softw.",
    "Record": "Rec.",
    "Health": "Health",
    "Magazine": "Mag.",
}
TOWNS = (
    "London|Paris|Berlin|New York|Boston|Chicago|Oxford|Cambridge|Amsterdam|Dordrecht|Leiden|Rotterdam|The Hague|"
    "Heidelberg|Munich|München|Stuttgart|Frankfurt|Leipzig|Hamburg|Göttingen|Vienna|Wien|Zürich|Basel|Geneva|Rome|"
    "Milano|Torino|Bologna|Madrid|Barcelona|Lisbon|Dublin|Edinburgh|Glasgow|Manchester|Bristol|Leeds|Brussels|Leuven|"
    "Copenhagen|Stockholm|Uppsala|Oslo|Helsinki|Warsaw|Prague|Budapest|Athens|Istanbul|Moscow|Tel Aviv|Jerusalem|"
    "Cairo|Nairobi|Cape Town|New Delhi|Mumbai|Bangalore|Singapore|Bangkok|Beijing|Shanghai|Hong Kong|Seoul|Tokyo|"
    "Kyoto|Osaka|Sydney|Melbourne|Brisbane|Auckland|Toronto|Montreal|Ottawa|Vancouver|Mexico City|Lima|Santiago|"
    "Buenos Aires|São Paulo|Washington, DC|Washington, D.C.|Philadelphia|Baltimore|Pittsburgh|Princeton, NJ|"
    "New Haven, CT|Ithaca, NY|Durham, NC|Chapel Hill|Atlanta, GA|Miami|Nashville|Cincinnati|Cleveland, Ohio|Detroit|"
    "Ann Arbor, MI|Ann Arbor|Bloomington|Urbana, IL|Urbana-Champaign|Madison, WI|Minneapolis|St. Louis|Austin, TX|"
    "Austin, Texas|Dallas, TX|Houston|Santa Fe|Los Alamos, NM|Los Angeles|San Diego|San Francisco, CA|Berkeley|"
    "Berkeley, CA|Stanford, CA|Palo Alto, CA|San Mateo, CA|Menlo Park, CA|Portland, Oregon|Seattle, WA|"
    "Cambridge, MA|Cambridge, Mass.|Reading, MA|Hillsdale, NJ|Englewood Cliffs, NJ|Upper Saddle River|Hoboken|"
    "Philadelphia, PA|Sydney, Australia|Kyoto, Japan|Paris, France|Vienna, Austria|Seoul, Korea|Cambridge, UK|"
    "Toronto, Canada|Edinburgh, Scotland|Barcelona, Spain|Beijing, China|Bari, Italy|Orlando, Florida|Chichester|"
    "Aldershot|Basingstoke|Harmondsworth|Thousand Oaks|Norwell|Mahwah|Dresden|Bonn|Tübingen|Köln|Graz|Turku|Ghent"
).split("|")
MONTHS = "January February March April May June July August September October November December".split()

_STARTS = "b br c cr d dr f g gr h k l m n p pr r s st t tr v w z bl ch sh th".split()
_MIDDLES = "a e i o u ai ea ou ar er or an en in on el al".split()
_ENDS = "n r l s t m d ck nd rt st ll rg ld th rn".split()
_TITLE_ENDS = "ation ing ity ism ics ical ous al ive ment ness ology ine ase oid an ic ate ure ance ia".split()


def make_word(rng: random.Random, *, titular: bool) -> str:
    """A word that no language has, with the ending of a word of titles where that is asked."""
    word = "".join(rng.choice(_STARTS) + rng.choice(_MIDDLES) for _ in range(rng.choice((1, 1, 2, 2, 3))))
    return word + rng.choice(_TITLE_ENDS if titular else _ENDS)


def make_surname(rng: random.Random) -> str:
    """A surname: a common one, or one of syllables."""
    if rng.random() < 0.6:
        return rng.choice(SURNAMES)
    name = make_word(rng, titular=False).capitalize()
    tail = rng.choice(("", "", "", "", "", "", "son", "sen", "ski", "ova", "berg", "mann", "ini", "ez", "oglu", "yan"))
    return name + tail
