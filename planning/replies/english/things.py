"""What somebody brings: "a 9x13 of lasagna and 2 dozen rolls" -> things with amounts and categories."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from planning import amounts
from planning.replies.english.lexicon import NUMBER, number_of, singulars, words
from planning.replies.text import Sentence, Token

_DETERMINERS = frozenset(("a", "an", "some", "my", "the", "our", "any", "your", "that", "those", "this", "another", "more", "also", "just", "maybe", "probably", "both", "either", "and", "with", "of", "again", "her", "his", "usual"))
_SIZE = frozenset(("world", "spare", "big", "large", "huge", "giant", "small", "little", "whole", "massive", "medium", "enormous", "great", "decent", "nice", "good", "generous", "giant", "full", "fresh", "few", "couple", "bunch", "lot", "lots", "load", "loads", "plenty", "ton", "tons", "extra", "famous", "homemade", "home-made", "delicious", "yummy", "legendary", "infamous", "signature", "world-famous", "favourite", "favorite", "amazing", "awesome", "best", "tasty", "trusty", "special"))
_CONTAINER = frozenset(("bowl", "tray", "platter", "pot", "pan", "plate", "dish", "batch", "bag", "bags", "box", "bottle", "bottles", "jar", "tub", "pack", "basket", "pile", "load", "bucket", "crate", "case", "jug", "pitcher", "cooler", "slow", "loaf", "tin", "helping", "portion", "thermos", "flask", "vat", "mountain", "selection", "variety", "assortment", "stack", "round", "rounds", "wheel"))
_FOR = re.compile(
    rf"^ ?(?P<all>\(? ?(?:(?:that|which) )?(?:(?:should |will |can )?(?:feeds?|serves?|be|is) )?(?:enough |plenty |big enough |sized |made )?(?:for|to feed|to serve|feeds|serves|feeding|serving|(?:will|should|can) (?:feed|serve)) (?:about |around |up to |roughly |at least |approx |like |maybe |all )*(?P<n>[0-9]{{1,9}}(?:-[0-9]{{1,4}})?|a dozen|two dozen|{NUMBER})(?:(?: to | or |-| - )(?P<hi>[0-9]{{1,4}}|{NUMBER}))?(?! (?:dollars|bucks|years|hours|minutes|lb|oz|pm|am|kids of))(?: ?(?:people|persons|ppl|servings|portions|of us|guests|or so|ish|folks|adults|hungry people|at least|total|now|instead))* ?\)?)"
)
_SERVINGS_OF = re.compile(rf"^ \(? ?(?P<n>[0-9]{{1,6}}(?:-[0-9]{{1,4}})?|{NUMBER}) (?:servings|portions|helpings|people)(?: worth)?(?: of)? ?\)?")
_FOR_ALL = re.compile(
    r"^ (?:\( )?(?:enough |plenty |sufficient )?(?:for|to feed|feeds|to go round|to go around) ?(?:everyone|everybody|all of us|all|the whole (?:group|crowd|gang|lot|party)|the crowd|the group|us all|the gang|the table|a crowd|the masses|the lot of us|you all)?(?: there)?(?: \))?"
)
_ASIDE = re.compile(
    r"^ (?:from (?:the |a )?(?:store|shop|bakery|supermarket|deli|market|corner shop|takeaway|freezer|garden|allotment|tree|plot)|store bought|store-bought|shop bought|shop-bought|bought|homemade|home-made|to share|again|too|as well|as usual|along|with me|for (?:the )?(?:bar|potato bar|supper|dinner|party|dessert|the table|potluck|pudding|starters?|the kids|the grill|lunch|the meal|saturday|sunday|friday|the day|the event)|for sure|on the day|this time|instead|like last (?:year|time)|then|tonight|tomorrow|on saturday|on sunday|on friday|on the side|if that is (?:ok|okay|fine|all right|useful|any good)|if that helps|if that works|if (?:you|anyone|people) (?:like|likes|want|wants|wish)|if (?:it is )?(?:needed|wanted|necessary|required|helpful)|if you need (?:it|them|more)|if no ?one else (?:is|does|has|will)(?: [a-z]+)?|if nobody else (?:is|does|has|will)(?: [a-z]+)?|from us|from me|duty|detail|on me|on us|now|after all|as promised|okay|ok|and that is it|in total|or so|each|over|there|myself|ourselves)(?= |$)"
)
_STORE = re.compile(r"\b(?:store|shop|bakery|supermarket|deli)\b|\b(?:store|shop)-bought\b|\bbought\b|\b(?:buy|buying|grab|pick up|picking up|get|purchase)\b")
_CUT = frozenset(("without", "but", "because", "if", "unless", "so", "since", "though", "although", "when", "which", "that", "who", "unfortunately", "sorry", "then", "while", "until", "before", "after", "as", "where", "hope", "hopefully", "maybe", "or", "instead", "not", "can", "will", "would", "is", "are", "was", "have", "has", "need", "needs", "once", "assuming", "(", ")", "-", "–", "—", ":", "do", "does", "should", "could", "just", "to", "at", "around", "by", "i", "we", "they", "he", "she", "you", "it", "in case", "also", "along", "too", "from", "depending", "plus", "anyone", "let", "looking", "coming", "covered", "sorted", "handled", "under"))


_PLACES = frozenset(("on", "in", "near", "back", "home", "tomorrow", "today", "tonight", "over", "down", "up", "out", "off", "about", "into", "onto", "under", "saturday", "sunday", "friday", "monday", "tuesday", "wednesday", "thursday", "again"))
_INSIDE = frozenset(("the cob", "a blanket", "the hole", "cob", "blankets", "a stick", "sticks", "toast", "a bun", "the half", "the bone"))


def _inside(tokens: list[Token], i: int, last: int) -> bool:
    """Whether "on", "in" belongs to the dish's name ("corn on the cob", "chicken in wine sauce")."""
    following = [t.plain for t in tokens[i + 1 : min(i + 3, last)]]
    if tokens[i].plain not in ("on", "in") or not following:
        return tokens[i].plain == "down" and following[:1] == ["cake"]
    if " ".join(following) in _INSIDE or following[0] in _INSIDE:
        return True
    return (tokens[i].plain == "in" and following[0] in _SAUCES) or following[-1] in _SAUCES


_SAUCES = frozenset(["sauce", "gravy", "cream", "wine", "butter", "oil", "tomato", "coconut", "garlic", "beer", "cider", "milk", "syrup", "broth", "vinegar", "mustard"])


@dataclass(frozen=True)
class Thing:
    """`known` 0 to 1: how sure we are that it is something for the table; `first`/`last` its tokens."""

    dish: str
    category: str
    known: float
    first: int
    last: int
    servings: float | None = None
    quantity: str | None = None
    for_all: bool = False
    vague: bool = False
    store_bought: bool = False
    conditional: bool = False
    factor: float | None = None
    other: bool = False
    """Certainly not for the table: a friend, a guitar, good vibes."""


def _servings(match: re.Match[str]) -> float:
    if match["n"].endswith("dozen"):
        return 24.0 if match["n"].startswith("two") else 12.0
    low, _, high = match["n"].partition("-")
    first = float(low) if low.replace(".", "").isdigit() else float(number_of(match["n"]))
    second = match.groupdict().get("hi") or high
    if second:
        return (first + (float(second) if second.isdigit() else float(number_of(second)))) / 2
    return first


def _tail(left: str) -> re.Match[str] | None:
    for pattern in (_FOR, _SERVINGS_OF):
        if (match := pattern.match(left)) is not None:
            return match
    match = _FOR_ALL.match(left)
    return match if match is not None and match[0].strip() not in ("for", "to feed", "feeds", "enough", "enough for") else None


def known_thing(name: str) -> tuple[str, float, bool]:
    """(category, how sure 0 to 1 that it is for the table, certainly something else)."""
    plain = name.lower()
    tokens = plain.split()
    if not tokens:
        return "", 0.0, False
    head = tokens[-1]
    table = words("dish")
    if plain in words("notdish"):
        return "", 0.0, True
    for form in singulars(plain):
        if form in table:
            return table[form], 0.95, False
    if head in words("notdish"):
        return "", 0.0, True
    category, sure = _catalogue(name)
    if sure >= 0.95:
        return category, 0.95, False
    for n in range(min(3, len(tokens)), 0, -1):
        for form in singulars(" ".join(tokens[-n:])):
            if form in table:
                return table[form], 0.9 if table[form] != "supplies" or set(tokens[:-n]) <= _PLAIN else 0.7, False
    if sure < 0.5:
        return category if sure > 0.3 else "", sure, False
    if category == "supplies" or sure < 0.75:
        return category, 0.7, False
    # The catalogue forgives slips of the pen: good for "lasanga", bad for "a winning streak". A longer word, or a
    # head noun that is a dish to the letter, is believed; the rest is asked about.
    exact_head = _catalogue(head)[1] >= 0.95
    return category, 0.9 if exact_head or (len(tokens) == 1 and len(head) >= 7) else 0.7, False


_PLAIN = frozenset(
    ["plastic", "paper", "disposable", "reusable", "extra", "folding", "metal", "wooden", "garden", "camping", "serving", "party", "picnic", "big", "small", "some", "enamel", "steel", "glass", "compostable", "bamboo", "outdoor", "spare", "large", "long", "round", "cheap", "nice", "red", "blue", "green", "white", "yellow"]
)


def _catalogue(name: str) -> tuple[str, float]:
    """The catalogue's word on it; (“”, 0) while there is no catalogue."""
    try:
        from planning.dishes import lookup
    except ImportError:
        return "", 0.0
    match = lookup(name)
    return match.category or "", float(match.confidence) if match.category else 0.0


def things_at(sentence: Sentence, first: int, last: int, *, bare: bool = False) -> list[Thing]:
    """The list of things from token `first` on, at most to `last`. With `bare` (no "I'll bring" before it)
    only what is known to be for the table counts."""
    tokens = sentence.tokens
    found: list[Thing] = []
    i = first
    while i < last:
        while i < last and (tokens[i].plain in (",", "and", "&", "+", "plus", "also", "with", "maybe", "then") or (tokens[i].plain == "as" and tokens[i + 1 : i + 2] and tokens[i + 1].plain == "well")):
            i += 2 if tokens[i].plain == "as" else 1
            if tokens[i - 1].plain == "as" or (tokens[i - 1].plain == "well" and i < last and tokens[i].plain == "as"):
                i += 1
        if i >= last or not sentence.free(i):
            break
        if found and tokens[i].plain in ("i", "we", "my", "me") and i + 1 < last and tokens[i + 1].plain in ("will", "can", "am", "are", "would", "wife", "husband", "partner", "mother", "have", "hope"):
            break
        thing, after = _thing(sentence, i, last)
        if thing is None or after <= i:
            break
        if bare and not thing.vague and not _bare_name(thing):
            break
        if thing.servings and thing.category == "supplies" and found and found[-1].category == "supplies":
            before = found[-1]  # "plates and cups for 30" is 30 of both
            if not (before.servings or before.quantity or before.vague) and before.last == thing.first - 1:
                found[-1] = replace(before, servings=thing.servings)
        found.append(thing)
        i = after
        if i < last and tokens[i].plain not in (",", "and", "&", "+", "plus", "also", "as", "with"):
            break
    return found


_VERBS = frozenset(
    ["love", "loves", "like", "likes", "hate", "hates", "made", "makes", "make", "what", "spill", "need", "needs", "want", "wants", "eat", "eats", "ate", "smell", "smells", "taste", "tastes", "see", "saw", "look", "looks", "a", "an", "the", "i", "my", "his", "her", "our", "mmm", "mm", "mmmm", "yum", "yummy", "ooh", "ever", "sell", "found", "grew", "grow", "grows", "get", "got", "put", "give", "gave", "lost", "burnt", "burned", "burn", "drop", "dropped", "forgot", "buy", "bought", "are", "was", "were", "is", "has", "had", "be", "been", "too", "very", "much", "no", "not", "never", "that", "this", "those", "these", "such", "how", "why", "which", "whose", "enough", "brought", "brings", "bakes", "add", "adding", "stir", "mix", "full", "dying", "going", "piece", "know", "think", "say", "says", "said", "tell", "ask", "asked", "use", "used", "mind", "talk", "talking", "watering"]
)


def _bare_name(thing: Thing) -> bool:
    """Whether words without "I'll bring" name a dish, rather than tell something about one."""
    words_in = thing.dish.lower().split()
    if thing.known < 0.75 or len(words_in) > 5 or any(w in _VERBS for w in words_in):
        return False
    return thing.known >= 0.9


def _joined(tokens: list[Token], i: int, j: int, last: int) -> bool:
    """Whether the "and" at `j` is inside one dish ("mac and cheese")."""
    if tokens[j].plain not in ("and", "&") or j + 1 >= last or j == i:
        return False
    pairs = words("pair")
    for before in (3, 2, 1):
        for after in (3, 2, 1):
            a, b = j - before, j + 1 + after
            if a >= i and b <= last:
                phrase = " ".join([*(t.plain for t in tokens[a:j]), "and", *(t.plain for t in tokens[j + 1 : b])])
                if phrase in pairs:
                    return True
    return False


def _thing(sentence: Sentence, i: int, last: int) -> tuple[Thing | None, int]:
    tokens, start = sentence.tokens, i
    amount: amounts.Amount | None = None
    quantity: str | None = None
    servings: float | None = None
    factor: float | None = None
    for_all = store = conditional = False
    # Before the name: words for how much, how big, whose.
    vague = _vague(tokens, i, last)
    while i < last and vague is None:
        plain = tokens[i].plain
        left = " " + " ".join(t.plain for t in tokens[i:last])
        if (match := _SERVINGS_OF.match(left)) is not None:
            servings, i = _servings(match), i + len(match[0].split())
            continue
        if plain in ("double", "triple") and amount is None:
            factor = 2.0 if plain == "double" else 3.0
            i += 1 + (i + 1 < last and tokens[i + 1].plain == "batch")
            continue
        if plain == "enough":
            for_all, i = True, i + 1
            continue
        read = _amount_at(tokens, i, last) if amount is None else None
        if read is not None:
            amount, quantity, i = read
            continue
        if plain in _DETERMINERS or plain in _SIZE:
            i += 1
            continue
        if plain in _CONTAINER and i + 1 < last and tokens[i + 1].plain == "of":
            i += 2
            continue
        if plain == "store-bought" or (plain == "store" and i + 1 < last and tokens[i + 1].plain == "bought"):
            store, i = True, i + (1 if plain == "store-bought" else 2)
            continue
        vague = _vague(tokens, i, last)
        break
    name_start = i
    if vague is not None:
        category, i = vague
    else:
        category = ""
        while i < last and i - name_start < 7 and sentence.free(i):
            plain = tokens[i].plain
            left = " " + " ".join(t.plain for t in tokens[i:last])
            if i > name_start and (_tail(left) or _ASIDE.match(left)):
                break
            if plain in (",", "+", "/") or (plain in ("and", "&") and not _joined(tokens, name_start, i, last)):
                break
            if i > name_start and plain == "full" and tokens[i + 1 : i + 2] and tokens[i + 1].plain == "of":
                i += 2  # "a slow cooker full of meatballs" is meatballs
                name_start = i
                continue
            if plain == "plus" or plain in _CUT:
                break
            if plain in _PLACES and (i == name_start or not _inside(tokens, i, last)):
                break
            if plain in ("for", "feeds", "serves", "enough", "with"):
                if plain == "with" and i > name_start and i + 1 < last and tokens[i + 1].plain not in ("my", "our", "me", "the", "two", "three", "us", "a"):
                    i += 1
                    continue
                break
            if plain[0].isdigit():
                break
            i += 1
    name_end = i
    while name_end > name_start and tokens[name_end - 1].plain in ("of", "the", "a", "and", "with", "for"):
        name_end -= 1
    # After the name: for how many, from where, on what condition.
    progress = True
    while progress and i < last:
        progress = False
        left = " " + " ".join(t.plain for t in tokens[i:last])
        if (tail := _tail(left)) is not None:
            if tail.re is _FOR_ALL:
                for_all = True
            else:
                servings = _servings(tail)
            i, progress = i + len(tail[0].split()), True
        elif (aside := _ASIDE.match(left)) is not None:
            store |= _STORE.search(aside[0]) is not None
            conditional |= bool(re.search(r"\bif (?:it is |you |no|nobody|necessary|needed|wanted|required|helpful)", aside[0])) and "like" not in aside[0]
            i, progress = i + len(aside[0].split()), True
        elif tokens[i].plain == "(" and amount is None and (read := _amount_at(tokens, i + 1, last)) is not None and read[2] < last and tokens[read[2]].plain == ")":
            amount, quantity, i, progress = read[0], read[1], read[2] + 1, True
        elif (
            tokens[i].plain in (",", "-", "–", ":") and amount is None and servings is None and i + 1 < last
            and (read := _amount_at(tokens, i + 1, last)) is not None and read[2] >= last and read[0].unit != "piece"
        ):  # fmt: skip
            amount, quantity, i, progress = read[0], read[1], read[2], True
        elif (
            tokens[i].plain in (",", "-", "–", ":", "x") and amount is None and servings is None and i + 2 == last == len(tokens)
            and tokens[i + 1].plain.isascii() and tokens[i + 1].plain.isdigit() and 6 <= int(tokens[i + 1].plain[:5]) <= 500
        ):  # fmt: skip
            if _counted(tokens[name_start:name_end]):
                quantity = tokens[i + 1].raw
            else:
                servings = float(tokens[i + 1].plain)
            i, progress = i + 2, True
        elif tokens[i].plain in (",", "-", "–", "(", ":") and i + 1 < last:
            after = " " + " ".join(t.plain for t in tokens[i + 1 : last])
            if _FOR.match(after) or _SERVINGS_OF.match(after) or re.match(r" (?:store|shop)[ -]bought|^ from the (?:store|shop|bakery)", after):
                i, progress = i + 1, True
        elif tokens[i].plain == ")":
            i, progress = i + 1, True
    if name_end <= name_start:
        return None, start
    raw = raw_words(tokens[name_start:name_end])
    raw = re.sub(r"\s+", " ", raw).strip(" ,'\"")
    plain_name = " ".join(t.plain for t in tokens[name_start:name_end])
    if vague is not None:
        return Thing(plain_name, category, 0.9, start, i, servings, quantity, for_all, True, store, conditional, factor), i
    category, sure, other = known_thing(plain_name)
    if amount is not None and amount.kind == "serving" and servings is None:
        servings, quantity = float(amount.value + amount.most) / 2, None
    return Thing(raw, category, sure, start, i, servings, quantity, for_all, False, store, conditional, factor, other), i


def _counted(name: Sequence[Token]) -> bool:
    """Whether a bare number behind the name counts the things themselves ("napkins, 40"), not those who eat."""
    return bool(name) and name[-1].plain.endswith("s") and not name[-1].plain.endswith("ss")


def raw_words(tokens: Sequence[Token]) -> str:
    """The words as typed; what stood together stays together, and a word written out appears once."""
    text = ""
    for k, token in enumerate(tokens):
        before = tokens[k - 1] if k else None
        if before is not None and token.start == before.start:
            continue
        text += (" " if before is not None and token.start > before.end else "") + token.raw
    return text


def _vague(tokens: list[Token], i: int, last: int) -> tuple[str, int] | None:
    """ "something", "a main", "whatever is missing": the category it names, and where it ends."""
    table = words("vague")
    for n in (5, 4, 3, 2, 1):
        if i + n <= last and (phrase := " ".join(t.plain for t in tokens[i : i + n])) in table:
            nxt = tokens[i + n].plain if i + n < last else ""
            if nxt and nxt not in (",", "and", "for", "+", "&", "if", "but", "too", "as", "(", "-", "then", "to", "with", "from", "also", "that", "again", "or", "instead", "of", "duty", "detail"):
                continue
            return table[phrase], i + n
    return None


def _amount_at(tokens: list[Token], i: int, last: int) -> tuple[amounts.Amount, str, int] | None:
    """The longest amount from token `i`, its text, and the position after it and its "of"."""
    if i >= last:
        return None
    plain = tokens[i].plain
    if not (plain[0].isdigit() or plain[0] in "½⅓⅔¼¾⅛#" or plain in amounts.number_words() or plain in ("a", "an", "no.", "half", "couple", "several") or "-" in plain):
        return None
    top = min(last, i + 7)
    for j in range(top, i, -1):
        if j < last and tokens[j].plain == "-" :
            continue
        text = raw_words(tokens[i:j])
        if len(text) > amounts.LONGEST:
            continue
        amount = amounts.parse(text)
        if amount is None and tokens[j - 1].plain != tokens[j - 1].raw:
            amount = amounts.parse(" ".join(t.plain for t in tokens[i:j]))
        if amount is None:
            continue
        if amount.kind == "serving" and not any(t.plain in ("servings", "portions", "serving", "portion", "people", "helpings") for t in tokens[i:j]):
            continue
        if j < last and tokens[j].plain in ("with", "full") and tokens[j + 1 : j + 2] and tokens[j + 1].plain != "of":
            continue  # "a cooler with ice" is a cooler
        if amount.package is None and amount.kind in ("package", "pan", "can") and amount.value == Fraction(1) and j - i == 2 and tokens[i].plain in ("a", "an"):
            pass  # "a bag" is an amount when "of" something follows, else perhaps the thing itself
        if j < last and tokens[j].plain == "of":
            return amount, text, j + 1
        if j + 1 < last and tokens[j].plain == "full" and tokens[j + 1].plain == "of":
            return amount, text, j + 2
        if j < last and tokens[j].plain not in (",", "and", "for", "but", ")", "+", "&", "with", "full"):
            return amount, text, j
        if amount.unit == "piece" or (j >= last and amount.kind not in ("mass", "volume")):
            continue
        return amount, text, j
    return None
