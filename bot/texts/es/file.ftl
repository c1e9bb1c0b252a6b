# Fallos de un archivo: una línea cada uno. $place es el lugar, como guests[2].adults.

file-not-object = { $place } debe ser un objeto entre llaves.
file-format = el formato { $value } no se conoce; escribe 1.
file-missing = falta { $place }; añádelo.
file-unknown-key = { $place } no se conoce y se dejó fuera.
file-wrong-type = { $place } debe ser { $wanted ->
    [text] texto entre comillas
    [number] un número
    [amount] un importe como "12.50"
    [true-or-false] true o false
    [list] una lista entre corchetes
    [latitude-longitude] una lista de latitud y longitud
   *[list-of-texts] una lista de textos
}.
file-too-low = { $place } es { $value }; debe ser { $low } o más.
file-not-whole = { $place } es { $value }; debe ser un número entero.
file-unknown-word = { $place } es «{ $value }»; debe ser uno de { $allowed }.
file-bad-time = { $place } es «{ $value }»; escríbelo como 2027-09-18T17:00.
file-ends-before-start = { $place } debe ser después de starts_at.
file-service-level = { $place } es { $value }; debe estar entre 0 y 1.
file-unknown-zone = { $place } es «{ $value }»; nombra una zona de la base IANA como America/Chicago.
file-odds = { $place } es { $value }; debe ir de 0 a 1.
file-doubled-id = { $place }: el id «{ $id }» está dos veces; da a cada uno el suyo.
file-promise-of-nobody = la promesa «{ $id }» es de «{ $guest }», que no está entre los invitados.
file-payment-of-nobody = { $place } es de «{ $guest }», que no está entre los invitados.
file-declined-by-nobody = { $place } nombra a «{ $guest }», que no está entre los invitados; no cambia nada.
file-bad-date = { $place } es «{ $value }»; escribe la fecha como 2027-09-18.
file-unknown-guest = { $place } nombra a «{ $guest }», que no está entre los invitados.
file-awake = { $place } deben ser dos horas como ["07:00", "22:00"].
