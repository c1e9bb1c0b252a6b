money-none = Nadie me ha dicho que haya pagado algo. Escríbelo así: «pagué 12,50 por hielo».
