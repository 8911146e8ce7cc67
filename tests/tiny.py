"""A glossary of three species and five small languages, for tests of machinery. Invented shares, real words."""

from __future__ import annotations

from service.glossary.build import build
from service.glossary.model import Glossary

VOCABULARY = """
[form]
whole = "w"
whole-dehulled = "wd"
split-with-skin = "ss"
split-dehulled = "sd"
flour = "f"
[colour]
black = "b"
brown = "b"
white = "w"
yellow = "y"
red = "r"
green = "g"
[standing]
pulse = "p"
look-alike = "l"
poison = "x"
[status]
draft = "d"
checked = "c"
disputed = "?"
retired = "r"
[agreement]
m = "m"
f = "f"
pl = "pl"
gen = "gen"
comb = "comb"
[topic]
generic = "g"
quality = "q"
weight = "w"
connector = "c"
rice = "r"
snack = "s"
"""
SPECIES = """[species]
id = "{id}"
latin = "{latin}"
family = "Fabaceae"
english = "{english}"
standing = "{standing}"
source = "memory"
{classes}{sold}"""
SOLD = '\n[[sold]]\nmarket_class = "{0}"\nform = "{1}"\ncolour = "{2}"\nshare = {3}\nsource = "common-practice"\n'
HEAD = "lang,script,kind,ref,text,use,agrees,status,source,note\n"
NAMES = {
    "hi": """Deva,base,cicer-arietinum,चना,preferred,m
Deva,base,vigna-mungo,उड़द,preferred,f
Deva,base,cajanus-cajan,अरहर,preferred,f
Deva,colour,black,काला,preferred,m
Deva,colour,black,काली,preferred,f
Deva,form,split-dehulled,धुली,preferred,f
Deva,form,whole,साबुत,preferred,
Deva,pattern,split-dehulled,{colour} {base} {form} दाल,preferred,f
Deva,pattern,whole,{colour} {base},preferred,
Deva,pattern,vigna-mungo//whole,{colour} {form} {base},preferred,
Latn,base,cicer-arietinum,chana,preferred,m
Latn,base,vigna-mungo,urad,preferred,f
Latn,base,cajanus-cajan,toor,preferred,f
Latn,colour,black,kala,preferred,m
Latn,colour,black,kali,preferred,f
Latn,form,split-dehulled,dhuli,preferred,f
Latn,pattern,split-dehulled,{base} dal {form},also,f
Latn,pattern,split-dehulled,{form} {base} dal,preferred,f
Latn,pattern,whole,{colour} {base},preferred,
Latn,fixed,cicer-arietinum/desi/split-dehulled/yellow,chana dal,preferred,
Latn,noise,quality,premium,preferred,
Latn,noise,weight,kg,preferred,""",
    "kn": """Knda,base,vigna-mungo,ಉದ್ದು,preferred,
Knda,base,vigna-mungo,ಉದ್ದಿನ,preferred,gen
Knda,pattern,split-dehulled,{base.gen} ಬೇಳೆ,preferred,
Latn,base,vigna-mungo,uddu,preferred,
Latn,base,vigna-mungo,uddina,preferred,gen
Latn,pattern,split-dehulled,{base.gen} bele,preferred,""",
    "te": """Latn,base,cajanus-cajan,kandulu,preferred,
Latn,base,cajanus-cajan,kandi,preferred,comb
Latn,pattern,split-dehulled,{base.comb}pappu,preferred,
Latn,pattern,whole,{base},preferred,""",
    "en": """Latn,base,cicer-arietinum,chickpea,preferred,
Latn,base,vigna-mungo,black gram,preferred,
Latn,base,cajanus-cajan,pigeon pea,preferred,
Latn,form,split-dehulled,split,preferred,
Latn,form,flour,flour,preferred,
Latn,colour,black,black,preferred,
Latn,colour,white,white,preferred,
Latn,pattern,default,{form} {colour} {base},preferred,
Latn,pattern,flour,{base} {form},preferred,
Latn,other,rice,rice,preferred,
Latn,other,snack,chips,preferred,""",
    "ta": """Taml,base,cajanus-cajan,துவரை,preferred,
Taml,pattern,split-dehulled,{base} பருப்பு,preferred,
Taml,pattern,sandhi,ை ப -> ைப் ப,preferred,""",
}


def _species(slug: str, english: str, classes: tuple[str, ...], sold: str, standing: str = "pulse") -> bytes:
    genus, _, epithet = slug.partition("-")
    listed = "".join(
        f'\n[[market_class]]\nid = "{one}"\nenglish = "{one}"\nsource = "memory"\n' for one in classes
    )
    rows = "".join(SOLD.format(*line.split(",")) for line in sold.split())
    text = SPECIES.format(
        id=slug,
        latin=f"{genus.title()} {epithet}",
        english=english,
        standing=standing,
        classes=listed,
        sold=rows,
    )
    return text.encode()


def tiny_files() -> dict[str, bytes]:
    """The files of the tiny glossary."""
    files = {
        "vocabulary.toml": VOCABULARY.encode(),
        "sources.toml": b"",
        "pulses/cicer-arietinum.toml": _species(
            "cicer-arietinum",
            "chickpea",
            ("desi", "kabuli"),
            "desi,whole,brown,2 desi,whole,black,1 kabuli,whole,white,2 desi,split-dehulled,yellow,3 desi,flour,yellow,1",
        ),
        "pulses/vigna-mungo.toml": _species(
            "vigna-mungo", "black gram", (), ",whole,black,1 ,whole,green,0.1 ,split-dehulled,white,2"
        ),
        "pulses/cajanus-cajan.toml": _species(
            "cajanus-cajan", "pigeon pea", (), ",whole,brown,1 ,split-dehulled,yellow,3"
        ),
    }
    for lang, text in NAMES.items():
        lines = [f"{lang},{line},draft,memory,\n" for line in text.splitlines()]
        files[f"names/{lang}.csv"] = (HEAD + "".join(lines)).encode()
    return files


def tiny() -> Glossary:
    """The tiny glossary."""
    return build(tiny_files())
