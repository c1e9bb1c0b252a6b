"""Reads the hyponyms of a noun from WordNet's database files (format: wndb(5WN), Princeton WordNet 3.0)."""

from __future__ import annotations

from pathlib import Path

DATA = Path("/usr/share/wordnet/data.noun")
"""Where Debian's package wordnet-base puts the nouns."""


def _synsets() -> dict[str, tuple[list[str], list[str]]]:
    """offset -> (words, offsets of hyponyms)"""
    found = {}
    with DATA.open(encoding="utf-8") as lines:
        for line in lines:
            if line.startswith(" "):
                continue  # the licence at the top of the file
            fields = line.split("|")[0].split()
            count = int(fields[3], 16)
            words = [fields[4 + 2 * i].replace("_", " ") for i in range(count)]
            at = 4 + 2 * count
            pointers = [fields[at + 1 + 4 * i : at + 5 + 4 * i] for i in range(int(fields[at]))]
            found[fields[0]] = (words, [offset for symbol, offset, pos, _ in pointers if symbol == "~" and pos == "n"])
    return found


def hyponyms(roots: dict[str, str]) -> dict[str, set[str]]:
    """For each root (name -> synset offset) every word below it, in lower case."""
    synsets = _synsets()
    found = {}
    for name, root in roots.items():
        words: set[str] = set()
        todo, seen = list(synsets[root][1]), set()
        while todo:
            offset = todo.pop()
            if offset not in seen:
                seen.add(offset)
                words.update(word.casefold() for word in synsets[offset][0])
                todo.extend(synsets[offset][1])
        found[name] = words
    return found
