"""What a cook or host writes about heat and appliances, read into steps and a kitchen."""

from planning.kitchen_words.appliances import read_kitchen
from planning.kitchen_words.heating import cooking_words, read_steps, taken_as_celsius
from planning.kitchen_words.lent import BROUGHT, one_more, with_one_more
from planning.kitchen_words.told import KitchenTold, kitchen_told
from planning.kitchen_words.unread import Unread
from planning.kitchen_words.within import kitchen_within

__all__ = [
    "BROUGHT", "KitchenTold", "Unread", "cooking_words", "kitchen_told", "kitchen_within", "one_more", "read_kitchen",
    "read_steps", "taken_as_celsius", "with_one_more",
]  # fmt: skip
