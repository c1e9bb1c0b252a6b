"""What people write when they mean an amount: "3 lb", "1½ cups", "8-10", "2 dozen", "a 9x13 pan".

Values are exact fractions. Spoons, cups, pints and gallons are the customary ones of the United States.
"""

from planning.amounts.numbers import number, number_words, read_number
from planning.amounts.reading import KINDS, LONGEST, Amount, parse, split, to_unit
from planning.amounts.showing import friendly, say, show
from planning.amounts.units import Unit, factor, unit_of

__all__ = [
    "KINDS",
    "LONGEST",
    "Amount",
    "Unit",
    "factor",
    "friendly",
    "number",
    "number_words",
    "parse",
    "read_number",
    "say",
    "show",
    "split",
    "to_unit",
    "unit_of",
]
