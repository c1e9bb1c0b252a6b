whoneeds-none = Nobody who comes has told me of an allergy or a diet. That is not to say there are none: ask.
whoneeds-table = Told so far at this table: { $needs }. Whoever told nothing may still have some: ask, and ask the cook what is in a dish.
whoneeds-of = { $name }: { $needs }
whoneeds-ask = Whoever told nothing may still have some: ask.
