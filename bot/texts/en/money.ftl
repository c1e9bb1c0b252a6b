money-none = Nobody has told me of anything they paid. Write it like “I paid 12.50 for ice”.
