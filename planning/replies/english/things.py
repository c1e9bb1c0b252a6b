"""What somebody brings: "a 9x13 of lasagna and 2 dozen rolls" -> things with amounts and categories."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning import amounts
from planning.replies.english.lexicon import singulars, words
from planning.replies.english.manner import manner
from planning.replies.english.nouns import known_thing
from planning.replies.english.phrases import inside_name, joined, vague_at
from planning.replies.english.sizes import (
    SERVINGS_OF,
    Behind,
    amount_at,
    amount_behind,
    servings_in,
    tail,
)
from planning.replies.english.sorts import filled, fills, sorts_at
from planning.replies.text import Sentence, Token, raw_words

_ASIDE = re.compile(
    r"^ (?:on order|this year|on (?:the|my|our) way(?: over| there| home| up| in)?|that (?:day|morning|night|evening)|in the morning|with me|from the (?!store|shop|bakery|supermarket|deli|market|corner|takeaway|freezer|garden|allotment|tree|plot)[a-z]+s|from (?:the |a |my |our )?(?:[a-z]+ )?(?:store|shop|bakery|supermarket|deli|market|corner shop|takeaway|freezer|garden|allotment|tree|plot|wholesaler|cash and carry)|store bought|store-bought|shop bought|shop-bought|bought|homemade|home-made|to share|again|too|as well|as usual|along|with me|for (?:the |our |your )?(?:bbq|barbecue|barbie|cookout|picnic|feast|gathering|get-together|event|bar|potato bar|supper|dinner|party|dessert|the table|potluck|pudding|starters?|the kids|the grill|lunch|the meal|saturday|sunday|friday|the day|the event)|for sure|on the day|this time|instead|like last (?:year|time)|then|tonight|tomorrow|on saturday|on sunday|on friday|on the side|if that is (?:ok|okay|fine|all right|useful|any good)|if that helps|if that works|if (?:you|anyone|people) (?:like|likes|want|wants|wish)|if (?:it is )?(?:needed|wanted|necessary|required|helpful)|if you need (?:it|them|more)|if no ?one else (?:is|does|has|will)(?: [a-z]+)?|if nobody else (?:is|does|has|will)(?: [a-z]+)?|from us|from me|duty|detail|on me|on us|now|after all|as promised|okay|ok|and that is it|in total|or so|each|over|there|myself|ourselves|together|coming (?:your way|up|from (?:me|us)|with (?:me|us))|incoming|your way|by me|by us|from our side|here|or (?:something(?: (?:like that|similar|along those lines))?|similar|so|whatever|such)|coming from (?:me|us)|of mine|of ours|i guess|i think|i suppose|i reckon|maybe|perhaps|please)(?= |$)"
)
_STORE = re.compile(
    r"\b(?:store|shop|bakery|supermarket|deli)\b|\b(?:store|shop)-bought\b|\bbought\b|\b(?:buy|buying|grab|pick up|picking up|get|purchase)\b"
)


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

    @property
    def heads_a_list(self) -> bool:
        """Whether it may only name the kind of what follows ("drinks: ...")."""
        return self.vague or self.dish.lower() in words("kindname")


def things_at(sentence: Sentence, first: int, last: int, *, bare: bool = False, loose: bool = False) -> list[Thing]:
    """The list of things from token `first` on, at most to `last`. With `bare` (no "I'll bring" before it)
    only what is known to be for the table counts; with `loose` too, what comes after that need not be known."""
    tokens = sentence.tokens
    found: list[Thing] = []
    i = first
    while i < last:
        if not found and (kinds := _of_a_kind(sentence, i, last)):
            found, i = kinds, kinds[-1].last
            continue
        while i < last and (
            tokens[i].plain in (",", "and", "&", "+", "plus", "also", "with", "maybe", "then", "/")
            or (tokens[i].plain == "as" and tokens[i + 1 : i + 2] and tokens[i + 1].plain == "well")
        ):
            i += 2 if tokens[i].plain == "as" else 1
            if tokens[i - 1].plain == "as" or (tokens[i - 1].plain == "well" and i < last and tokens[i].plain == "as"):
                i += 1
        if i + 1 < last and tokens[i].plain in ("$", "€", "£") and tokens[i + 1].plain[0].isdecimal():
            i += 2  # money is no dish
            continue
        if i >= last or not sentence.free(i):
            break
        if (
            found
            and tokens[i].plain in ("i", "we", "my", "me")
            and i + 1 < last
            and tokens[i + 1].plain
            in ("will", "can", "am", "are", "would", "wife", "husband", "partner", "mother", "have", "hope")
        ):
            break
        thing, after = _thing(sentence, i, last, run=not bare)
        if thing is None or after <= i:
            break
        if found and found[-1].category != "supplies" and not found[-1].quantity and _only_vessel(thing):  # "a lentil curry, big pot, should do 15"
            poured = " ".join(t.raw for t in tokens[thing.first : thing.last]) if thing.quantity else None
            before = found[-1]
            found[-1] = replace(
                before, servings=thing.servings or before.servings, quantity=before.quantity or poured, last=thing.last
            )
            i = after
            continue
        if found and tokens[thing.first - 1].plain == "," and _told_nearer(found[-1], thing):
            found[-1] = replace(thing, first=found[-1].first)  # "the bread, flat bread, for 30"
            i = after
            continue
        if found and tokens[thing.first - 1].plain == "with" and not (thing.servings or thing.quantity or thing.vague) and (found[-1].servings or found[-1].for_all):
            found[-1] = replace(found[-1], last=thing.last)
            i = after
            continue  # "curry for 15 with rice"
        if found and tokens[thing.first - 1].plain == "," and _inside(found[-1], thing):
            found[-1] = replace(found[-1], dish=filled(thing.dish, found[-1].dish), last=thing.last)
            i = after
            continue  # "dumplings, 60 pieces, pork"
        if found and thing.known < 0.5 and after < last and tokens[after].plain in _DOES:
            break  # "... and Tom will sort the wine"
        if bare and not thing.vague and not _bare_name(thing) and not (loose and found):
            break
        if thing.servings and thing.category == "supplies" and found and found[-1].category == "supplies":
            before = found[-1]  # "plates and cups for 30" is 30 of both
            if not (before.servings or before.quantity or before.vague) and before.last == thing.first - 1:
                found[-1] = replace(before, servings=thing.servings)
        found.append(thing)
        i = after
        if (
            i + 1 < last
            and tokens[i].plain in (":", "-", "–")
            and thing.heads_a_list
            and (inside := things_at(sentence, i + 1, last))
            and all(t.known >= 0.75 for t in inside)
        ):
            return [*found[:-1], *inside]  # "drinks: lemonade for 20 and water for 10"
        if i < last and tokens[i].plain not in (",", "and", "&", "+", "plus", "also", "as", "with", "/") and (bare or not _runs_on(tokens, found[-1], i)):
            break
    return _for_each(sentence, found, i, last)


def _dish_by_name(tokens: Sequence[Token], i: int, last: int) -> bool:
    """Whether a dish is called after a vessel here: "a pot roast" is no pot of roast."""
    if tokens[i].plain not in ("a", "an") or i + 2 >= last or tokens[i + 1].plain not in words("vessel"):
        return False
    return known_thing(f"{tokens[i + 1].plain} {tokens[i + 2].plain}")[1] >= 0.95


_LEANS = frozenset(("actually", "rather", "instead", "probably", "perhaps", "maybe", "honestly", "basically", "simply", "just", "probs"))
"""Words before a name that are no part of it."""


def _inside(before: Thing, thing: Thing) -> bool:
    """Whether the second thing only says what the first is filled with."""
    bare = not (thing.servings or thing.quantity or thing.vague)
    return bool(before.servings or before.quantity) and bare and fills(thing.dish, before.dish)


def _of_a_kind(sentence: Sentence, i: int, last: int) -> list[Thing]:
    """ "2 pies, pecan and apple": a pecan pie and an apple pie."""
    found = sorts_at(sentence, i, last)
    return [
        Thing(name, known_thing(name)[0], 0.95, i if not k else start, end, None, "1")
        for k, (name, start, end) in enumerate(found)
    ]


_DOES = frozenset(("will", "is", "can", "has", "does", "would", "brings", "makes", "wants", "might"))


def _holder(word: str) -> bool:
    return (
        (word in words("vessel") and known_thing(word)[0] != "supplies")
        or word in words("sizeword")
        or word in words("determiner")
    )


def _told_nearer(before: Thing, thing: Thing) -> bool:
    """Whether the second name only says which kind of the first it is."""
    plain, nearer = before.dish.lower().split(), thing.dish.lower().split()
    sized = before.servings or before.quantity or before.vague
    return len(plain) == 1 and len(nearer) > 1 and nearer[-1] == plain[0] and not sized


_GLASSES = frozenset(("glass", "glasses", "ramekin", "ramekins", "cups", "pots", "jars", "bowls", "dishes", "trays", "tubs", "little", "small", "big", "large"))


def _number_behind(tokens: list[Token], i: int, last: int, name: int) -> Behind | None:
    """ "Rolls 24": the number stands behind its dish without a comma."""
    plain = tokens[i].plain
    if not plain.isdecimal() or not 2 <= int(plain) <= 500 or known_thing(tokens[i - 1].plain)[1] < 0.75:
        return None
    if i + 1 < last and tokens[i + 1].plain not in (",", "and", "&", "+", "plus", ")", "for"):
        return None
    comma = Token(",", ",", tokens[i].start, tokens[i].start)
    told = [*tokens[:i], comma, *tokens[i : i + 1]]
    behind = amount_behind(told, i, i + 2, told[name:i])
    return replace(behind, after=i + 1) if behind is not None and behind.after == i + 2 else None


def _only_vessel(thing: Thing) -> bool:
    if thing.quantity and not thing.vague and set(thing.dish.lower().split()) <= _GLASSES:
        return True  # "rhubarb fool, 12 little glasses"
    return set(thing.dish.lower().split()) <= words("vessel").keys() | words("sizeword").keys() and not thing.vague


def _for_each(sentence: Sentence, found: list[Thing], i: int, last: int) -> list[Thing]:
    """ "Pasta salad and garlic bread, both for 10": the amount is that of each."""
    tokens = sentence.tokens
    j = i + (i < last and tokens[i].plain == ",")
    if len(found) < 2 or j + 1 >= last or tokens[j].plain not in ("both", "each", "all"):
        return found
    behind = amount_behind(tokens, j + 1, last, [])
    if behind is None or not (behind.servings or behind.for_all):
        return found
    each = [
        t if t.servings or t.quantity else replace(t, servings=behind.servings, for_all=behind.for_all) for t in found
    ]
    return [*each[:-1], replace(each[-1], last=behind.after)]


def _bare_name(thing: Thing) -> bool:
    """Whether words without "I'll bring" name a dish, rather than tell something about one."""
    words_in = thing.dish.lower().split()
    if len(words_in) > 5 or any(w in words("tells") for w in words_in):
        return False
    return thing.known >= (0.7 if thing.servings or thing.quantity else 0.9)


_POURS = frozenset(("thermos", "flask", "jug", "pitcher", "dispenser", "urn", "keg", "carafe", "bottle", "bottles"))


def _is_drink(tokens: list[Token], i: int, last: int) -> bool:
    """Whether a drink is named from token `i` on."""
    names = (" ".join(t.plain for t in tokens[i:j]) for j in range(min(last, i + 3), i, -1))
    return any(known_thing(name)[0] == "drink" and known_thing(name)[1] >= 0.75 for name in names)


def _amount_at(tokens: list[Token], i: int, last: int) -> tuple[amounts.Amount, str, int] | None:
    """An amount from token `i`, with how big its vessel is said to be ("a big pot of chili")."""
    big = i + 1
    while tokens[i].plain in ("a", "an", "one", "two", "three") and big < last and tokens[big].plain in words("sizeword"):
        big += 1
    if big == i + 1 or big >= last or not set(singulars(tokens[big].plain)) & words("vessel").keys():
        return amount_at(tokens, i, last)
    read = amount_at([*tokens[: i + 1], *tokens[big:]], i, last - (big - i - 1))
    if read is None or not (big + 1 < last and tokens[big + 1].plain in ("of", "full")):
        return amount_at(tokens, i, last)
    return read[0], raw_words(tokens[i : big + 1]), read[2] + big - i - 1


_BIG = re.compile(r"(?:an?|one) (?:[a-z]+ )*(?:big|large|huge|giant|massive|good|enormous|whole|decent|generous)\b")
_ABOUT = frozenset(("like", "about", "around", "maybe", "roughly", "approx", "approximately", "say", "probably", "some", "perhaps", "bout", "abt", "at", "least"))


def _amount_begins(tokens: list[Token], first: int, i: int, last: int) -> bool:
    """Whether a name is over where an amount begins without a comma ("bread two loaves", "lumpia like 40",
    "coleslaw big tub")."""
    j = i
    while j < last and tokens[j].plain in _ABOUT:
        j += 1
    if j >= last:
        return False
    sized = tokens[j].plain in words("sizeword")
    numbered = tokens[j].plain[0].isdecimal() or tokens[j].plain in amounts.number_words()
    if not (sized or numbered) or known_thing(" ".join(t.plain for t in tokens[first:i]))[1] < 0.75:
        return False
    if sized:  # "coleslaw big tub"
        while j < last and tokens[j].plain in words("sizeword"):
            j += 1
        return j == last - 1 and tokens[j].plain in words("vessel")
    return amount_behind(tokens, i, last, tokens[first:i]) is not None


def _small_bracket(sentence: Sentence, i: int, last: int) -> int | None:
    """Where a bracket of at most three words that nobody else has read ends, behind a dish."""
    tokens = sentence.tokens
    for j in range(i + 2, min(i + 5, last)):
        if tokens[j].plain == ")":
            inside = [t.plain for t in tokens[i + 1 : j]]
            free = all(sentence.free(k) for k in range(i + 1, j)) and all(w.isalpha() for w in inside)
            roles = ("kin", "kins", "guestkin", "eaters", "tells")
            return j + 1 if free and not any(w in words(role) for w in inside for role in roles) else None
    return None


def _runs_on(tokens: list[Token], before: Thing, i: int) -> bool:
    """Whether the next dish follows without a comma ("plates forks cups")."""
    return (
        before.last == i
        and before.known >= 0.95
        and tokens[i - 1].plain.endswith("s")
        and not tokens[i - 1].plain.endswith(("'s", "ss"))
        and any(known_thing(" ".join(t.plain for t in tokens[i : i + m]))[1] >= 0.95 for m in (3, 2, 1) if i + m <= len(tokens))
    )


_SORT_OF = frozenset(("salad", "casserole", "soup", "bake", "pie", "curry", "stew", "bread", "cake", "dip", "sauce", "bar", "bars", "sandwich", "sandwiches", "platter", "tray", "dish", "pizza", "rolls", "buns", "plates", "cups"))


def _split_run(tokens: list[Token], first: int, last: int) -> int | None:
    """Where the first of several dishes in a row ends ("plates forks cups", "hot dogs buns ketchup"): a name in the
    plural, before other names the table knows to the letter; None where it is one name."""
    plain = [t.plain for t in tokens[first:last]]
    if len(plain) < 2 or known_thing(" ".join(plain))[1] >= 0.95:
        return None
    for n in range(len(plain) - 1, 0, -1):
        head = " ".join(plain[:n])
        if not plain[n - 1].endswith("s") or plain[n - 1].endswith(("'s", "ss")) or plain[n] in _SORT_OF - {"rolls", "buns", "plates", "cups"} or known_thing(head)[1] < 0.95:
            continue
        if any(known_thing(" ".join(plain[n : n + m]))[1] >= 0.95 for m in (3, 2, 1) if n + m <= len(plain)):
            return first + n
    return None


_BOTTLED = re.compile(r"\b(?:bottles?|crates?|kegs?|magnums?|growlers?|(?:six|twelve)[- ]packs?)\b", re.IGNORECASE)
"""What holds drinks, where nothing else is known of what is in it."""


def _thing(sentence: Sentence, i: int, last: int, *, run: bool = True) -> tuple[Thing | None, int]:
    tokens, start = sentence.tokens, i
    amount: amounts.Amount | None = None
    quantity: str | None = None
    servings: float | None = None
    factor: float | None = None
    for_all = store = conditional = False
    # Before the name: words for how much, how big, whose.
    vague = vague_at(tokens, i, last)
    while i < last and vague is None:
        plain = tokens[i].plain
        left = " " + " ".join(t.plain for t in tokens[i:last])
        if (match := SERVINGS_OF.match(left)) is not None:
            servings, i = servings_in(match), i + len(match[0].split())
            continue
        if plain in ("double", "triple") and amount is None:
            factor = 2.0 if plain == "double" else 3.0
            i += 1 + (i + 1 < last and tokens[i + 1].plain == "batch")
            continue
        if plain == "enough":
            for_all, i = True, i + 1
            continue
        read = _amount_at(tokens, i, last) if amount is None and not _dish_by_name(tokens, i, last) else None
        if read is not None:
            amount, quantity, i = read[0], read[1].removesuffix(" of"), read[2]
            i += i + 1 < last and tokens[i].plain in ("x", "×")  # "2x potato salad"
            continue
        if plain in words("determiner") or plain in words("sizeword") or plain in _LEANS:
            i += 1
            continue
        if plain in words("vessel") and i + 1 < last and tokens[i + 1].plain == "of":
            i += 2
            continue
        if plain in _POURS and i + 2 < last and tokens[i + 1].plain == "with" and _is_drink(tokens, i + 2, last):
            i += 2
            continue  # "a thermos with mulled cider"
        if plain == "store-bought" or (plain == "store" and i + 1 < last and tokens[i + 1].plain == "bought"):
            store, i = True, i + (1 if plain == "store-bought" else 2)
            continue
        vague = vague_at(tokens, i, last)
        break
    name_start = i
    if vague is not None:
        category, i = vague
    else:
        category = ""
        while i < last and i - name_start < 7 and sentence.free(i):
            plain = tokens[i].plain
            left = " " + " ".join(t.plain for t in tokens[i:last])
            if i > name_start and (tail(left) or _ASIDE.match(left)):
                break
            if plain == "x" and tokens[i + 1 : i + 2] and tokens[i + 1].plain[0].isdecimal():
                break  # "tortilla chips x 5 bags"
            if plain in (",", "+", "/") or (plain in ("and", "&") and not joined(tokens, name_start, i, last)):
                break
            if i > name_start and plain == "full" and tokens[i + 1 : i + 2] and tokens[i + 1].plain == "of":
                i += 2  # "a slow cooker full of meatballs" is meatballs
                name_start = i
                continue
            if plain == "with" and i > name_start and all(_holder(t.plain) for t in tokens[name_start:i]):
                i += 1  # "my big thermos with mulled cider"
                name_start = i
                continue
            if plain in ("plus", "→", "no") or plain in words("endsdish"):
                break
            if plain in words("placeword") and (i == name_start or not inside_name(tokens, i, last)):
                break
            if plain in ("for", "feeds", "serves", "enough", "with"):
                if (
                    plain == "with"
                    and i > name_start
                    and i + 1 < last
                    and tokens[i + 1].plain not in ("my", "our", "me", "the", "two", "three", "us", "a")
                ):
                    i += 1
                    continue
                break
            if plain[0].isdecimal() or (i > name_start and _amount_begins(tokens, name_start, i, last)):
                break
            i += 1
    if run and vague is None and (split := _split_run(tokens, name_start, i)) is not None:
        i = split
    name_end = i
    while name_end > name_start and tokens[name_end - 1].plain in ("of", "the", "a", "and", "with", "for"):
        name_end -= 1
    # After the name: for how many, from where, on what condition.
    progress = True
    while progress and i < last:
        progress = False
        left = " " + " ".join(t.plain for t in tokens[i:last])
        behind = amount_behind(tokens, i, last, tokens[name_start:name_end]) or _number_behind(tokens, i, last, name_start)
        if behind is not None and (amount is None or amount.value == 1 or behind.quantity is None):
            servings, quantity, for_all = (
                behind.servings or servings,
                behind.quantity or quantity,
                for_all or behind.for_all,
            )
            amount = behind.amount or amount
            i, progress = behind.after, True
        elif (aside := _ASIDE.match(left)) is not None:
            store |= _STORE.search(aside[0]) is not None
            conditional |= (
                bool(re.search(r"\bif (?:it is |you |no|nobody|necessary|needed|wanted|required|helpful)", aside[0]))
                and "like" not in aside[0]
            )
            i, progress = i + len(aside[0].split()), True
        elif tokens[i].plain in ("no", "without") and (made := manner(tokens, i, last)):
            i, progress = made, True  # "potato salad no eggs"
        elif tokens[i].plain == "," and i + 1 < last and (made := manner(tokens, i + 1, last)):
            i, progress = made, True
        elif tokens[i].plain == "(" and i + 1 < last and (made := manner(tokens, i + 1, last)) and made < last and tokens[made].plain == ")":
            i, progress = made + 1, True  # "chili (mild) and cornbread"
        elif tokens[i].plain == "(" and (close := _small_bracket(sentence, i, last)) is not None:
            i, progress = close, True  # "bread (sourdough)"
        elif tokens[i].plain in (",", "-", "–", "(", ":") and i + 1 < last:
            after = " " + " ".join(t.plain for t in tokens[i + 1 : last])
            if re.match(r" (?:store|shop)[ -]bought|^ from the (?:store|shop|bakery)", after):
                i, progress = i + 1, True
        elif tokens[i].plain == ")":
            i, progress = i + 1, True
    if name_end <= name_start:
        return None, start
    raw = raw_words(tokens[name_start:name_end])
    if name_end < len(tokens) and tokens[name_end].start == tokens[name_end - 1].start:
        raw = raw.removesuffix(tokens[name_end - 1].raw) + tokens[name_end - 1].plain  # "bread's on me"
    raw = re.sub(r"\s+", " ", re.sub(r"(?i)\bw(?:/\s*|\s)", "with ", raw)).strip(" ,'\"")
    plain_name = " ".join(t.plain for t in tokens[name_start:name_end])
    if vague is not None:
        return Thing(
            plain_name, category, 0.9, start, i, servings, quantity, for_all, True, store, conditional, factor
        ), i
    typed = known_thing(raw)  # "roast veg" is no "roast vegetarian"
    if (
        " of " in plain_name
        and plain_name not in words("dish")
        and known_thing(plain_name.partition(" of ")[2])[1] >= 0.95
        and known_thing(plain_name.partition(" of ")[0])[1] < 0.9
    ):
        raw = plain_name = raw.partition(" of ")[2]  # "a crock of baked beans"
        typed = known_thing(raw)
    by_plain = known_thing(plain_name)
    category, sure, other = typed if typed[1] >= min(0.95, by_plain[1]) else by_plain
    if " with " in plain_name and (head := known_thing(plain_name.partition(" with ")[0]))[1] >= 0.95:
        category = head[0]  # "potato salad with mayo" is a salad
    if sure < 0.75 and _BOTTLED.search(quantity or "") and all(known_thing(w)[1] < 0.9 for w in plain_name.split()):
        category, sure = "drink", 0.8  # "4 bottles of red"
    if quantity and servings and _BIG.match(quantity.lower()):
        quantity = None  # "a big pot of chili for 15" is for 15
    if amount is not None and amount.kind == "serving" and servings is None:
        servings, quantity = float(amount.value + amount.most) / 2, None
    return Thing(
        raw, category, sure, start, i, servings, quantity, for_all, False, store, conditional, factor, other
    ), i
