# Lo que dice el propio mensajero.

courier-pin-refused = No pude fijar el tablero. Quien cuida este grupo puede fijarlo a mano o dejarme fijar mensajes.

# Por qué algo no llegó, para quien organiza.
courier-why-blocked = no ha abierto un chat privado conmigo, o lo cerró
courier-why-gone = ya no estoy en ese grupo
courier-why-no-right = no se me permite escribir ahí
courier-why-lost = el mensaje del que trataba ya no está
courier-why-refused = así no se podía enviar
courier-why-doubt = la conexión se cortó mientras se enviaba: puede haber llegado o no
courier-why-late = su momento pasó antes de poder enviarlo
courier-why-line = la conexión con la plataforma siguió cortada
