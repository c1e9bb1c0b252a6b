"""Labelled Spanish sentences told again in other words that mean the same, as `retold.py` does with English ones."""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace
from functools import partial
from random import Random

from planning.replies.spanish.lexicon import PLAIN
from planning.replies.spanish.names import known_dish
from tests.replies.corpus import Line
from tests.replies.retold import Way, dashes, headed, low, new_lines, opened, slipped, small, tailed, titled, told

OPENERS = (
    "Hola! ", "Buenas, ", "Buenas tardes a todos. ", "Perdón por la tardanza: ", "Acabo de ver esto! ", "Pues ", "Bueno, ",
    "Oigan, ", "Che, ", "Ey, ", "A ver, ", "Por cierto, ", "Respondo al fin: ", "Familia, ", "Ok, ", "Para la lista: ", "Mira, ",
)  # fmt: skip
TAILS = (
    "Qué ganas de veros!", "Ha sido una semana larguísima.", "El jardín está precioso, por cierto.", "Un abrazo enorme",
    "A ver si no llueve!", "Qué bonita la foto del grupo", "Gracias por organizar todo.", "Besos 😘", "Estoy sin batería casi",
    "Saludos desde la oficina.", "Qué buena idea!", "Ya tengo hambre jajaja",
)  # fmt: skip
WRAPS = (
    "Les aviso: {}", "{}, si os parece bien", "Confirmando: {}", "{}, si no hay problema", "Que conste: {}", "Hola! {} Saludos",
    "Soy Ravi. {}", "{}, díganme si hay problema", "Por mi parte: {}", "{}, gracias",
)  # fmt: skip
NAMES_ES = (("ravi", "Ravi"), ("pat", "Itziar"), ("mei", "Bruno"))
OTHERWISE = (
    (r"\bllevo\b", ("traigo", "voy a llevar", "llevaré", "puedo llevar", "aporto", "me encargo de llevar")),
    (r"\btraigo\b", ("llevo", "voy a traer", "traeré", "puedo llevar")),
    (r"\bllevamos\b", ("vamos a llevar", "traemos", "llevaremos")),
    (r"\bno puedo ir\b", ("no voy a poder ir", "no podré ir", "me es imposible ir", "no voy a poder asistir", "no puedo asistir")),
    (r"\bno vamos\b", ("no iremos", "no podemos ir", "no vamos a ir", "no vamos a poder")),
    (r"\bcuenten conmigo\b", ("contad conmigo", "cuenta conmigo", "me apunto", "ahí estaré", "cuéntenme")),
    (r"\bsomos (\d)\b", (r"vamos \1", r"seremos \1", r"iremos \1", r"venimos \1")),
    (r"\bmi (?:esposa|mujer)\b", ("mi marido", "mi pareja", "mi novia", "mi esposo")),
    (r"\bmi (?:esposo|marido)\b", ("mi mujer", "mi pareja", "mi novio", "mi esposa")),
    (r"\bniños\b", ("peques", "nenes", "críos", "chiquillos")),
    (r"\bpara (\d+)\b(?! min)", (r"para unas \1 personas", r"como para \1", r"para \1 personas", r"pa \1", r"que alcance para \1")),
    (r"\bquizás\b", ("tal vez", "a lo mejor", "quizá")),
    (r"\bal final\b", ("finalmente",)),
    (r"\blo siento\b", ("perdón", "lo lamento", "disculpen")),
    (r"\bal[eé]rgic[oa] a\b", ("muy alérgica a", "alergico a", "alérgica a")),
)  # fmt: skip
STREET = {"que": "q", "por": "x", "para": "pa", "también": "tb", "porque": "xq", "de": "d", "pero": "xo", "gracias": "grax", "quien": "kien", "como": "cmo", "con": "cn"}  # fmt: skip
_WORD = re.compile(r"[A-Za-zñáéíóúü]{6,}")


def _kept(line: Line) -> set[str]:
    return {w.translate(PLAIN) for _, value in line.expected for w in re.findall(r"\w+", value.lower())}


def no_accents(line: Line, chance: Random) -> Line | None:
    kept = [(k, v.translate(PLAIN)) if k in ("bring", "add", "move", "top") else (k, v) for k, v in line.expected]
    made = told(line, line.text.translate(PLAIN).replace("¿", "").replace("¡", ""))
    return replace(made, expected=frozenset(kept)) if made is not None else None


def wrapped(line: Line, chance: Random) -> Line | None:
    if "?" in line.text or "\n" in line.text:
        return None
    wrap = chance.choice(WRAPS)
    text = line.text.rstrip(" .")
    if wrap.startswith("Hola") and text[-1:] not in ".!":
        text += "."
    return told(line, wrap.format(text if wrap[0] in "{HS" else low(text)))


def typo(line: Line, chance: Random) -> Line | None:
    kept = _kept(line)
    spots = [
        m for m in _WORD.finditer(line.text)
        if m[0].islower() and m[0].translate(PLAIN) not in kept and known_dish(m[0].translate(PLAIN)) is None
    ]  # fmt: skip
    return slipped(line, chance, spots)


def by_ear(line: Line, chance: Random) -> Line | None:
    """As one hears it: b for v, k for qu, no h."""
    kept = _kept(line)

    def heard(match: re.Match[str]) -> str:
        word = match[0]
        if word.translate(PLAIN) in kept or not word.islower() or len(word) < 4:
            return word
        return word.replace("v", "b").replace("qu", "k").replace("ll", "y").removeprefix("h")

    return told(line, re.sub(r"[\wñáéíóúü]+", heard, line.text))


def street(line: Line, chance: Random) -> Line | None:
    kept = _kept(line)
    return told(
        line,
        re.sub(r"[\wñáéíóú]+", lambda m: m[0] if m[0].translate(PLAIN) in kept else STREET.get(m[0], m[0]), line.text),
    )


def said_otherwise(line: Line, chance: Random) -> Line | None:
    ways = [(p, to) for p, to in OTHERWISE if re.search(p, line.text, re.IGNORECASE)]
    if not ways or any(k == "add" for k, _ in line.expected):
        return None
    pattern, words = chance.choice(ways)
    to = chance.choice(words)
    if "alérgica" in to and any("!!" in v for k, v in line.expected if k == "needs"):
        return None
    made = told(line, re.sub(pattern, to, line.text, count=1, flags=re.IGNORECASE))
    if made is not None and to.startswith("muy alérg"):
        return replace(
            made, expected=frozenset((k, v.replace("!", "!!") if k == "needs" else v) for k, v in line.expected)
        )
    return made


DISHES = (
    "empanadas",
    "flan",
    "guacamole",
    "paella",
    "gazpacho",
    "pozole",
    "croquetas",
    "natillas",
    "ensalada rusa",
    "arroz con pollo",
    "tres leches",
    "tostones",
    "chilaquiles",
    "torrijas",
)


def other_dish(line: Line, chance: Random) -> Line | None:
    """Another dish of the catalogue in the place of the one promised, where only one is."""
    brings = [v for k, v in line.expected if k == "bring"]
    if len(brings) != 1 or len(line.expected) > 3:
        return None
    dish, _, servings, quantity = brings[0].split("|")
    if dish not in line.text.lower():
        return None
    new = chance.choice([d for d in DISHES if d != dish])
    known = known_dish(new)
    assert known is not None
    text = re.sub(re.escape(dish), new, line.text, count=1, flags=re.IGNORECASE)
    rest = {(k, v) for k, v in line.expected if k != "bring"}
    return replace(
        line, text=text, expected=frozenset({*rest, ("bring", f"{new}|{known.category}|{servings}|{quantity}")})
    )


def other_numbers(line: Line, chance: Random) -> Line | None:
    """Servings and sizes that are another number."""
    brings = [v for k, v in line.expected if k in ("bring", "change") and re.search(r"\|\d+", v)]
    numbers = re.findall(r"\d+", line.text)
    if len(brings) != 1 or len(numbers) != 1 or numbers[0] not in brings[0]:
        return None
    new = str(chance.randrange(11, 60))
    text = line.text.replace(numbers[0], new)
    return replace(
        line,
        text=text,
        expected=frozenset((k, v.replace(numbers[0], new) if v == brings[0] else v) for k, v in line.expected),
    )


def other_names(line: Line, chance: Random) -> Line | None:
    text = re.sub(r"\bMei(?: Lin)?\b", "Bruno", re.sub(r"\bPat\b", "Itziar", line.text))
    return told(line, text)


WAYS_ES: dict[str, Way] = {
    "no accents": no_accents, "small letters": small, "as a phone writes": titled, "an opener": partial(opened, openers=OPENERS),
    "wrapped": wrapped, "chatter behind": partial(tailed, tails=TAILS), "chatter before": partial(headed, tails=TAILS), "one typo": typo, "by ear": by_ear, "street": street,
    "said otherwise": said_otherwise, "another dish": other_dish, "other numbers": other_numbers, "other names": other_names,
    "new lines": new_lines, "dashes": dashes,
}  # fmt: skip
