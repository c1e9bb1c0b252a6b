"""For the whole suite: how fast a machine is fails no test."""

from hypothesis import settings

settings.register_profile("suite", deadline=None)
settings.load_profile("suite")
