kitchen-unheard = No cuenta para el plan: { $words }.
