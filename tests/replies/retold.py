"""Labelled sentences told again in other words that mean the same: an unlimited supply of sentences nobody has seen.

Each way of retelling gives a line with its label (changed where a dish or a number was), or None where it does not
apply. What they put in is of our own making; chance is drawn from the sentence itself, so that a run can be repeated.
"""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from random import Random

from planning.replies.english.nouns import known_thing
from planning.tables import rows
from tests.replies.corpus import Line

Way = Callable[[Line, Random], Line | None]

OPENERS = (
    "Hey so ", "ok so ", "Right then, ", "Just saw this! ", "Sorry for the late reply - ", "fyi ", "Good evening all. ",
    "Oh and ", "Hiya, ", "Finally got round to this: ", "Quick one: ", "For the list: ", "Answering at last. ",
)  # fmt: skip
WRAPS = (
    "Just to let you know, {}", "{}, hope that is ok", "Just confirming: {}", "{}, if that's alright", "so yeah, {}",
    "To answer the question: {}", "{} - let me know if that's a problem", "As far as I can see: {}", "{}, best regards",
    "Hello! {} Best wishes", "This is Ravi. {}", "{} /Ravi",
)  # fmt: skip
TAILS = (
    "Can't wait to see everyone.", "It's been a long week here.", "The garden looks wonderful by the way.",
    "Hope the weather holds!", "Work is mad at the moment.", "Love the new picture of the group", "Great idea, this.",
    "My phone is nearly dead", "How was your holiday?", "Big hugs to all", "Feels like autumn already.", "xx",
)  # fmt: skip
NAMES = (("ravi", "Ravi"), ("pat", "Oksana"), ("mei", "Bashir"))
KEYS = {
    "q": "wa", "w": "qe", "e": "wr", "r": "et", "t": "ry", "y": "tu", "u": "yi", "i": "uo", "o": "ip", "p": "ol",
    "a": "sq", "s": "ad", "d": "sf", "f": "dg", "g": "fh", "h": "gj", "j": "hk", "k": "jl", "l": "ko", "z": "xs",
    "x": "zc", "c": "xv", "v": "cb", "b": "vn", "n": "bm", "m": "nj",
}  # fmt: skip
STREET = {
    "you": "u", "your": "ur", "with": "w/", "and": "&", "are": "r", "please": "pls", "people": "ppl", "because": "cuz",
    "for": "4", "to": "2", "thanks": "thx", "about": "abt", "though": "tho", "something": "smth", "tomorrow": "tmrw",
    "definitely": "def", "really": "rly", "before": "b4", "see": "c", "probably": "prob",
}  # fmt: skip
SAID_OTHERWISE = (
    (r"\bI'll bring\b", ("I will bring", "I can bring", "I'm going to bring", "I'm bringing", "I'd bring", "Let me bring")),
    (r"\bI'm bringing\b", ("I'll bring", "I am bringing", "I'll be bringing", "I'm gonna bring")),
    (r"\bI can bring\b", ("I could bring", "I'm able to bring", "I'd be happy to bring", "I am glad to bring")),
    (r"\bbringing\b", ("coming with", "making")),
    (r"\bcan't (?:make it|come)\b", ("won't be able to come", "am unable to come", "cannot make it", "can't be there", "will have to miss it")),
    (r"\b(?:I'm|I am) coming\b", ("I'll come", "I'll be there", "I shall be there", "I'm going to be there", "I'll make it")),
    (r"\b(?:we're|we are) coming\b", ("we'll come", "we will be there", "we're going to be there", "we'll make it")),
    (r"\b(\d+|two|three|four|five|six) of us\b", (r"the \1 of us", r"\1 people", r"\1 from our house")),
    (r"\ballergic to (peanuts|nuts|eggs|fish|shellfish|soy|sesame|milk)\b", (r"badly affected by \1, allergy", r"allergic against \1", r"having an allergy to \1")),
    (r"\bmy wife\b", ("my husband", "my partner", "my spouse", "my girlfriend")),
    (r"\bmy husband\b", ("my wife", "my partner", "my spouse", "my boyfriend")),
    (r"\b(?:two|2) kids\b", ("two children", "2 little ones", "my two kids")),
    (r"\bfor (\d+)\b(?! (?:min|hour|\$))", (r"for about \1", r"feeds \1", r"serves \1", r"enough for \1", r"for \1 people", r"(for \1)")),
    (r"\bactually\b", ("in fact", "on second thought", "hm,")),
    (r"\bmaybe\b", ("perhaps", "possibly")),
    (r"\bsorry\b", ("apologies", "so sorry", "my apologies")),
    (r"\bdon't\b", ("do not", "dont")),
    (r"\bcan't eat\b", ("don't eat", "mustn't have", "cannot eat", "can't have", "may not eat")),
    (r"\btoo\b", ("as well", "also")),
)  # fmt: skip
_WORD = re.compile(r"[A-Za-z]{5,}")


def told(line: Line, text: str) -> Line | None:
    """The line with this text; None where nothing of it changed or is left."""
    return None if text == line.text or not text.strip() else replace(line, text=text)


def low(text: str) -> str:
    """The first letter small, unless it begins a name or is "I"."""
    word = re.split(r"[^\w]", text, maxsplit=1)[0]
    return text if word in ("I", "Pat", "Mei", "Ravi") or word.isupper() else text[:1].lower() + text[1:]


def _names_in(line: Line) -> set[str]:
    """Words of the label's dishes and names: they must stay as they are."""
    return {w for _, value in line.expected for w in re.findall(r"\w+", value.lower())}


def opened(line: Line, chance: Random, openers: Sequence[str]) -> Line | None:
    """One of these words in front."""
    start = chance.choice(openers)
    return told(line, start + (line.text if start.rstrip()[-1] in ".!:" else low(line.text)))


def wrapped(line: Line, chance: Random) -> Line | None:
    if "?" in line.text or "\n" in line.text:
        return None
    wrap = chance.choice(WRAPS)
    text = line.text.rstrip(" .") if not wrap.startswith("{} ") else line.text
    if wrap == "Hello! {} Best wishes" and text[-1:] not in ".!":
        text += "."
    return told(line, wrap.format(text if wrap.startswith("{}") or wrap[0:5] == "Hello" else low(text)))


def tailed(line: Line, chance: Random, tails: Sequence[str]) -> Line | None:
    """One of these sentences of chatter behind."""
    end = line.text.rstrip()
    return told(line, end + ("" if end[-1:] in ".!?…)" else ".") + " " + chance.choice(tails))


def headed(line: Line, chance: Random, tails: Sequence[str]) -> Line | None:
    """One of these sentences of chatter before, if it is a whole one."""
    return told(line, chance.choice([t for t in tails if t[-1] in ".!"]) + " " + line.text)


def slipped(line: Line, chance: Random, spots: Sequence[re.Match[str]]) -> Line | None:
    """One slip in one of these words: a neighbouring key, a letter lost, doubled or swapped."""
    if not spots:
        return None
    spot = chance.choice(spots)
    word, at = spot[0], chance.randrange(1, len(spot[0]) - 1)
    slips = (
        word[:at] + chance.choice(KEYS.get(word[at], "x")) + word[at + 1 :],
        word[:at] + word[at + 1 :],
        word[:at] + word[at] + word[at:],
        word[:at] + word[at + 1] + word[at] + word[at + 2 :],
    )
    return told(line, line.text[: spot.start()] + chance.choice(slips) + line.text[spot.end() :])


def typo(line: Line, chance: Random) -> Line | None:
    """One slip in a longer word that is neither dish nor name."""
    kept = _names_in(line)
    spots = [
        m for m in _WORD.finditer(line.text)
        if m[0].islower() and m[0] not in kept and m[0].rstrip("s") not in kept and known_thing(m[0])[1] < 0.5
    ]  # fmt: skip
    return slipped(line, chance, spots)


def no_subject(line: Line, chance: Random) -> Line | None:
    """ "I'll bring" -> "will bring", "We're coming" -> "coming": only where the sentence begins."""
    text = re.sub(r"^(?:I'm|I am|We're|We are) (?=\w+ing\b)", "", line.text, flags=re.IGNORECASE)
    text = re.sub(r"^(?:I'll|We'll) ", "will ", text, flags=re.IGNORECASE)
    text = re.sub(r"^(?:I|We) (?=can|could|will|won't|might|would)", "", text, flags=re.IGNORECASE)
    return told(line, text)


def no_apostrophes(line: Line, chance: Random) -> Line | None:
    return told(line, re.sub(r"(?<=\w)['’](?=\w)", "", line.text))


def written_out(line: Line, chance: Random) -> Line | None:
    text = line.text
    for short, long in (
        (r"\bI'm\b", "I am"), (r"'ll\b", " will"), (r"\bcan't\b", "cannot"), (r"\bwon't\b", "will not"),
        (r"\b([Ww])e're\b", r"\1e are"), (r"n't\b", " not"), (r"\b(\w+)'ve\b", r"\1 have"), (r"\bI'd\b", "I would"),
        (r"\b([Ii])t's\b", r"\1t is"), (r"\b([Tt])hat's\b", r"\1hat is"),
    ):  # fmt: skip
        text = re.sub(short, long, text)
    return told(line, text)


def street(line: Line, chance: Random) -> Line | None:
    kept = _names_in(line)

    def short(match: re.Match[str]) -> str:
        after = line.text[match.end() : match.end() + 2].strip()[:1]
        word = match[0].lower()
        if word in kept or (word in ("for", "to", "and", "with") and (after.isdigit() or word in ("and",))):
            return match[0]
        return STREET.get(word, match[0])

    text = re.sub(r"[A-Za-z]+", short, line.text)
    return told(line, text)


def new_lines(line: Line, chance: Random) -> Line | None:
    return told(line, re.sub(r"(?<=[a-z]), | - |(?<=[a-z])\. ", "\n", line.text)) if "(" not in line.text else None


def small(line: Line, chance: Random) -> Line | None:
    return told(line, line.text.lower())


def titled(line: Line, chance: Random) -> Line | None:
    """As a phone writes: every sentence with a capital letter and a full stop."""
    text = re.sub(r"(^|[.!?]\s+)([a-z])", lambda m: m[1] + m[2].upper(), line.text)
    return told(line, text if text[-1:] in ".!?…)" else text + ".")


def no_commas(line: Line, chance: Random) -> Line | None:
    """Commas left out, but in lists of ages and dishes."""
    return told(line, re.sub(r"(?<=[a-z]), (?=(?:i|we|but|and|so|my|it|that|thanks|sorry|can)\b)", " ", line.text))


def dashes(line: Line, chance: Random) -> Line | None:
    return told(line, re.sub(r"(?<=[a-z]), ", " - ", line.text, count=1))


def turned(line: Line, chance: Random) -> Line | None:
    """Two sentences, or two halves of one that tell different things, in the other order."""
    parts = re.split(r"(?<=[.!]) ", line.text)
    if len(parts) == 2 and not re.match(r"(?:But|And|So|It|They|He|She|That|We'll|Just|No|Not|Or|Only|This|Maybe)\b", parts[1]):
        return told(line, f"{parts[1].rstrip('.')}. {parts[0]}")
    halves = re.split(r", (?:and )?(?=(?:I|we|I'll|we'll|I'm|we're|bringing|coming)\b)", line.text)
    if len(halves) == 2 and len({k for k, _ in line.expected}) > 1 and not re.search(r"\b(?:but|it|if|so|they|who)\b", line.text):
        return told(line, f"{halves[1].rstrip('.!')}, {low(halves[0])}")
    return None


def other_names(line: Line, chance: Random) -> Line | None:
    """The same said of people of other names; the ids stay (see NAMES)."""
    text = re.sub(r"\bMei Lin\b|\bMei\b", "Bashir", re.sub(r"\bPat\b", "Oksana", line.text))
    return told(line, text)


def _dishes() -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for row in rows("dishes"):
        name = row["name"]
        known = known_thing(name)
        if known[0] == row["category"] and known[1] >= 0.9 and " with " not in name and not name.endswith("s"):
            found.setdefault(row["category"], []).append(name)
    return found


DISHES = _dishes()


def other_dish(line: Line, chance: Random) -> Line | None:
    brings = [v.split("|") for k, v in line.expected if k == "bring"]
    if len(brings) != 1 or brings[0][1] not in DISHES or line.place.find("+") > 0:
        return None
    dish, category = brings[0][0], brings[0][1]
    if dish.endswith("s") or line.text.lower().count(dish) != 1:
        return None
    other = chance.choice(DISHES[category])
    text = re.sub(re.escape(dish), other, line.text, flags=re.IGNORECASE)
    text = re.sub(rf"\b(an?) (?={re.escape(other)})", "an " if other[0] in "aeiou" else "a ", text)
    value = "|".join((other, *brings[0][1:]))
    expected = {(k, value if k == "bring" else v) for k, v in line.expected}
    return replace(line, text=text, expected=frozenset(expected))


def other_number(line: Line, chance: Random) -> Line | None:
    """Another size of the one dish."""
    brings = [v.split("|") for k, v in line.expected if k == "bring"]
    if len(brings) != 1 or not brings[0][2].isdigit() or len(re.findall(rf"\b{brings[0][2]}\b", line.text)) != 1:
        return None
    if re.search(rf"{brings[0][2]}\s*[-–x]|[-–x]\s*{brings[0][2]}", line.text):
        return None
    n = str(chance.choice([k for k in (7, 9, 10, 11, 14, 16, 18, 22, 24, 35) if str(k) != brings[0][2]]))
    value = "|".join((brings[0][0], brings[0][1], n, brings[0][3]))
    text = re.sub(rf"\b{brings[0][2]}\b", n, line.text)
    return replace(line, text=text, expected=frozenset((k, value if k == "bring" else v) for k, v in line.expected))


IN_WORDS = {
    "1": "one", "2": "two", "3": "three", "4": "four", "5": "five", "6": "six", "7": "seven", "8": "eight", "9": "nine",
    "10": "ten", "12": "twelve", "20": "twenty",
}  # fmt: skip


def numbers_in_words(line: Line, chance: Random) -> Line | None:
    if any((k == "bring" and v.split("|")[3]) or k in ("heat", "late") for k, v in line.expected):
        return None
    return told(line, re.sub(r"(?<![\d:./x+-])\b\d{1,2}\b(?![\d:./x%-])", lambda m: IN_WORDS.get(m[0], m[0]), line.text))


def numbers_in_digits(line: Line, chance: Random) -> Line | None:
    if any((k == "bring" and v.split("|")[3]) or k in ("heat", "late", "add") for k, v in line.expected):
        return None
    digits = {w: d for d, w in IN_WORDS.items() if d != "1"}
    return told(line, re.sub(r"\b[a-z]+\b(?!-)", lambda m: digits.get(m[0], m[0]), line.text))


def otherwise(line: Line, chance: Random) -> Line | None:
    """One phrase of it said otherwise."""
    fits = [(p, r) for p, r in SAID_OTHERWISE if re.search(p, line.text, re.IGNORECASE)]
    if not fits:
        return None
    pattern, ways = chance.choice(fits)
    return told(line, re.sub(pattern, chance.choice(ways), line.text, count=1, flags=re.IGNORECASE))


WAYS: dict[str, Way] = {
    "opener": partial(opened, openers=OPENERS), "wrapped": wrapped,
    "chatter behind": partial(tailed, tails=TAILS), "chatter before": partial(headed, tails=TAILS),
    "typo": typo, "no subject": no_subject, "no apostrophes": no_apostrophes, "written out": written_out,
    "street": street, "new lines": new_lines, "small letters": small, "capitals and stops": titled,
    "no commas": no_commas, "dashes": dashes, "turned round": turned, "other names": other_names,
    "other dish": other_dish, "other number": other_number, "numbers in words": numbers_in_words,
    "numbers in digits": numbers_in_digits, "said otherwise": otherwise,
}  # fmt: skip


def _two(line: Line, chance: Random) -> Line | None:
    """Two ways, one upon the other."""
    first, second = chance.sample(sorted(WAYS), 2)
    once = WAYS[first](line, chance)
    return WAYS[second](once, chance) if once is not None else None


WAYS["two at once"] = _two
