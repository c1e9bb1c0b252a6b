understood = C’est noté : { $what }.
