"""The forms of Spanish verbs, by the rules of the language; `data/verbs_es.csv` names the verbs and what is irregular.

Forms stand without accents, as the plain words of a message do.
"""

# ruff: noqa: E501 - tables of endings are easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from planning.tables import rows

NOUNS = frozenset(
    ("vino", "como", "para", "sal", "cocina", "cocinas", "compra", "compras", "prueba", "cargo", "cargos", "corte", "cuento",
     "cuentos", "cuenta", "toma", "bebo", "este", "esta", "estas", "ve", "ven", "se", "di", "des", "de", "asa", "asas",
     "fui", "frio", "fria", "frios", "frias", "ase", "asemos", "bajo", "baja", "sobre", "vina", "vinos", "ser", "era", "eras",
     "caigan", "pasas", "pasa", "paso", "pasos", "saco", "sacos", "armas", "arma", "nada")
)  # fmt: skip
"""Forms that are other words as well: no sign of a verb by themselves."""
_AR = {
    "1s": ("o",), "1p": ("amos",), "3s": ("a",), "3p": ("an",), "2": ("as", "ais"), "i": ("aba", "abas", "abamos", "aban"),
    "p1": ("e", "amos"), "p3": ("o", "aron"), "p2": ("aste", "asteis"), "imp": ("a", "ad"), "ger": ("ando",), "part": ("ado",),
    "is": ("ara", "aras", "aramos", "aran", "ase", "asemos", "asen"),
}  # fmt: skip
_ER = {
    "1s": ("o",), "1p": ("emos",), "3s": ("e",), "3p": ("en",), "2": ("es", "eis"), "i": ("ia", "ias", "iamos", "ian"),
    "p1": ("i", "imos"), "p3": ("io", "ieron"), "p2": ("iste", "isteis"), "imp": ("e", "ed"), "ger": ("iendo",), "part": ("ido",),
    "is": ("iera", "ieras", "ieramos", "ieran", "iese", "iesemos", "iesen"),
}  # fmt: skip
_IR = _ER | {"1p": ("imos",), "2": ("es", "is"), "imp": ("e", "i", "id")}
_CHANGED = ("1s", "3s", "3p")
"""Where a stem's vowel changes."""


@dataclass(frozen=True)
class Verb:
    infinitive: str
    role: str
    forms: dict[str, tuple[str, ...]]


def conjugate(infinitive: str, irregular: str) -> dict[str, tuple[str, ...]]:
    """Slot -> forms. Slots: 1s 1p 2 3s 3p (present), f1 f3 (future), c (conditional), i (imperfect), p1 p2 p3 (past), s1 s3p
    s2 (subjunctive), is (its past), imp, inf, ger, part. `irregular` is "slot=forms" pieces, or s= past= f= stems."""
    own = dict(piece.split("=", 1) for piece in irregular.split())
    stem, kind = infinitive[:-2], infinitive[-2:]
    endings = {"ar": _AR, "er": _ER, "ir": _IR}[kind]
    found = {slot: tuple(_join(stem, e, kind) for e in ends) for slot, ends in endings.items()}
    if "change" in own:
        for slot in _CHANGED:
            found[slot] = tuple(_join(_changed(stem, own["change"]), e, kind) for e in endings[slot])
        found["2"] += (_join(_changed(stem, own["change"]), endings["2"][0], kind),)
    if "past" in own:
        past = own["past"]
        found |= {
            "p1": (f"{past}e", f"{past}imos"), "p2": (f"{past}iste", f"{past}isteis"),
            "p3": (f"{past}o", f"{past}{'eron' if past.endswith('j') else 'ieron'}"),
            "is": tuple(past + (e.removeprefix("i") if past.endswith("j") else e) for e in _ER["is"]),
        }  # fmt: skip
    future = own.get("f", infinitive)
    found["f1"], found["f2"] = (f"{future}e", f"{future}emos"), (f"{future}as", f"{future}eis")
    found["f3"] = (f"{future}a", f"{future}an")
    found["c"] = tuple(future + e for e in ("ia", "iamos", "ias", "ian"))
    if kind == "ir" and own.get("change") == "e>i":
        weak = _changed(stem, "e>i")
        found |= {slot: tuple(_join(weak, e, kind) for e in endings[slot]) for slot in ("p3", "ger", "is")}
    mood = own.get("s") or (found["1s"][0].removesuffix("o") if kind != "ar" or "change" in own else stem)
    vowel = "e" if kind == "ar" else "a"
    found["s1"] = tuple(_join(m, vowel + e, kind) for m in (mood, stem if kind == "ar" else mood) for e in ("", "mos"))
    found["s3p"], found["s2"] = (_join(mood, f"{vowel}n", kind),), (_join(mood, f"{vowel}s", kind),)
    found["s2"] += (_join(mood, f"{vowel}is", kind),)
    found["inf"] = (infinitive,)
    for slot, said in own.items():
        if slot not in ("change", "past", "f", "s"):
            found[slot] = tuple(said.split("|"))
    return found


def _changed(stem: str, change: str) -> str:
    old, new = change.split(">")
    at = stem.rfind(old)
    return stem[:at] + new + stem[at + 1 :] if at >= 0 else stem


def _join(stem: str, ending: str, kind: str) -> str:
    """A stem and an ending, its last letter spelt so that it sounds the same."""
    soft, last = ending[0] in "ei", stem[-1:]
    if kind == "ar" and soft and last in ("c", "g", "z"):
        stem = stem[:-1] + {"c": "qu", "g": "gu", "z": "c"}[last]
    if kind != "ar" and not soft:
        if stem.endswith("gu"):
            stem = stem[:-1]
        elif last == "g" and not stem.endswith(("ng", "ag", "aig")):
            stem = stem[:-1] + "j"
        elif last == "c" and stem[-2:-1] in "aeiou":
            stem = stem[:-1] + "zc"
    if ending.startswith("i") and stem[-1:] in "aeo" and len(ending) > 2 and ending[1] in "eo":
        ending = "y" + ending[1:]  # "cayo", "trayendo"
    return stem + ending


@cache
def verbs() -> tuple[Verb, ...]:
    return tuple(Verb(r["verb"], r["role"], conjugate(r["verb"], r["irregular"])) for r in rows("verbs_es"))


@cache
def forms(role: str, *slots: str) -> frozenset[str]:
    """The forms in these slots of all verbs of a role."""
    return frozenset(f for v in verbs() if v.role == role for slot in slots for f in v.forms.get(slot, ()))


@cache
def any_form(role: str, *slots: str) -> str:
    """A pattern for them, longest first; an ñ may be typed as n."""
    return "|".join(re.escape(f).replace("ñ", "[ñn]") for f in sorted(forms(role, *slots), key=lambda f: (-len(f), f)))


@cache
def finite() -> frozenset[str]:
    """Every form of a verb in the table that says who does it, but those that are nouns as well."""
    slots = ("1s", "1p", "2", "3s", "3p", "f1", "f2", "f3", "c", "i", "p1", "p2", "p3", "s1", "s2", "s3p", "is", "imp")
    return frozenset(f for v in verbs() for slot in slots for f in v.forms.get(slot, ())) - NOUNS
