"""Diets and allergies: what is listed in a dish, who can eat it, and who has nothing yet.

Nothing here ever calls a dish safe. It says what is listed, by whom, and whom to ask first; what nobody
listed stays a question.
"""

from planning.diets.asked import Asked, FoodQuestion, food_question, foods_asked, holds_food, questions_in
from planning.diets.listed import Listed, can_eat, listed, usually_fits
from planning.diets.needs import NeedRule, meant, need_of, need_words, needs_in, rule_of
from planning.diets.table import DietRow, diets, people_without
from planning.diets.words import say_of

__all__ = [
    "Asked",
    "DietRow",
    "FoodQuestion",
    "Listed",
    "NeedRule",
    "can_eat",
    "diets",
    "food_question",
    "foods_asked",
    "holds_food",
    "listed",
    "meant",
    "need_of",
    "need_words",
    "needs_in",
    "people_without",
    "questions_in",
    "rule_of",
    "say_of",
    "usually_fits",
]
