"""Coming, perhaps, not coming: one verb of coming and what shades it, from both sides of the ocean."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Answer
from planning.replies.intents import Intent, ReplyContext, SetAnswer
from planning.replies.text import Sentence

_WENT = r"(?:voy|vamos|ire|iremos|vengo|venimos|vendre|vendremos|asisto|asistimos|asistire|asistiremos|acudo|acudimos|acudire|acudiremos|llegare|llegaremos|llego|llegamos|caigo|caemos|caere|caeremos|jalo|jalamos|andare|andaremos|participo|participamos|participare)"
_TO_COME = r"(?:ir(?:me|nos)?|venir(?:me|nos)?|asistir|acudir|estar(?: ahi| alli| con ustedes| con vosotros| presentes?)?|llegar|caer(?:les|te|os)?|participar|acompañar(?:los|las|te|os|les)?|unir(?:me|nos)|sumar(?:me|nos)|pasar(?:me|nos)?|acercar(?:me|nos)|juntar(?:me|nos)|quedar)"
_CL = r"(?:(?:me|nos|te|les|os|los|las|se|lo|le) )*"
_AWAY = (
    r"(?! a (?!(?:ir|estar|asistir|venir|acudir|caer|llegar|pasar|participar|unir|sumar|acompañar|intentar)(?:me|nos|te|les|los|os)? )[a-zñ]+(?:ar|er|ir)(?:me|nos|te|les|os|los|las|lo|la|se)?(?= |$))(?! (?:equipo|carajo|joder|arriba|campeon(?:es)?|con todo|que se puede)(?= |$))(?! (?:de viaje|a casa|a mi casa|al (?:super|supermercado|trabajo|medico|doctor|gimnasio|gym|banco|cole|colegio|baño|cine|campo|partido|hospital|aeropuerto|mercado|dentista|taller|pueblo|bar)|a la (?:tienda|compra|playa|escuela|farmacia|oficina|peluqueria|iglesia de|universidad|facultad|cama|ducha)"
    r"|perdiendo|ganando|viendo|mal|fatal|bien|tirando|lento|camino|a (?:llevar|llegar|traer|hacer|preparar|poner|ver|comprar|tener|decir|necesitar|comer|cenar|dormir|trabajar|salir|dejar|intentar|preguntar|mandar|pedir|buscar|recoger|cocinar|avisar|confirmar|pasar|dar|terminar|probar|hablar|mirar|pensar|consultar|esperar|quedar(?:me|nos)? (?:en|sin)|ser|al|por|las? [0-9]|tratar)|(?:como )?(?:a |al )?(?:tarde|media hora|una hora|con retraso|atrasad|retrasad|[0-9]+ (?:minutos|min|horas?) tarde)"
    r"|en (?:camino|casa|el trabajo|la oficina|reunion|clase|el bus|el metro|coche|bici)|cansad|enferm|mal[oa]?s? (?:de|del)|content|feliz(?:mente)? de|harto|hasta el|pensando|esperando|embarazada|de acuerdo|segur[oa]s? de que no|sin (?:luz|agua|coche|dinero)|por (?:la calle|el centro)|sol[oa] en|[0-9]+ (?:a|horas)|engripad|agripad|malit|resfriad|de (?:guardia|turno|vacaciones|mudanza|baja|examenes)|fuera|trabajando|ocupad|pachuch|con (?:fiebre|gripe|covid|migraña|prisa)|de los|en contra|a favor))"
)
_START = r"(?:^|(?<= ,)|(?<= y)|(?<= pero)|(?<= que)|(?<= pues)|(?<= \.)|(?<= si)|(?<= -)|(?<= :)|(?<= entonces)|(?<= final))"
_LEAD = r"(?: (?:(?:los|las) (?:[a-zñ]+ ){0,4}[a-zñ]+(?= (?:vamos|iremos|venimos|caemos|llegamos|estaremos))|si|claro|claro que si|perfecto|genial|yo|nosotros|nosotras|pues|tambien|por supuesto|ahi|alli|aqui|alla|aca|por alla|por ahi|obvio|seguro|seguramente si|al final|todos|todas|familia|ok|okey|vale|dale|bueno|va|venga|sale|orale|listo|con (?:mucho )?gusto|encantad[oa]s?|feliz|felices|gustos[oa]s?|ya|entonces|igual|de una|de cabeza|finalmente|tranqui|super|y|hecho|confirmado|confirmadisimo|sin duda|desde luego|hola|ambos|los dos|toda la familia|la familia|mi familia y yo|toda la tropa|siempre|hombre|mujer|asi que|de todas (?:maneras|formas)|de todos modos|de cualquier (?:manera|modo|forma)|como sea|pase lo que pase|si o si|de fijo|de ley|llueva o truene|yo feliz|sin falta|con toda seguridad|faltaria mas|no faltaba mas|esta vez|como siempre|yo creo que si|yo si|nosotros si|solo|solo yo|este año si|esta vez si) ?,?)*"
_NO_GO = rf"(?:(?:{_WENT[3:-1]})(?! a (?!(?:ir|estar|asistir|venir|llegar|poder|la|el|su|tu)[a-z]* )[a-zñ]+(?:ar|er|ir)(?:me|nos|te|les|os|los|las|lo|la|se)?(?= |$))|puedo|podemos|podre|podremos|podria|podriamos|pude|alcanzo|alcanzamos|cuenten(?! conmigo para [a-z]+r )|cuentes(?! conmigo para [a-z]+r )|cuenta|conteis(?! conmigo para [a-z]+r )|cuenteis|cuentas|contes(?! conmigo para [a-z]+r )|esperen|esperes|espereis|asistimos)"
_FOOD = r"(?:llevar|traer|hacer|comer|preparar|tomar|beber|usar|cocinar|probar|poner|comprar|mandar|hornear|faltar|fallar(?:les|te|os)?|perder(?:me|nos)?l[oa]|creer|esperar|quejar|decir|aguantar|dormir|parar|dejar|evitar|ayudar|negar|pedir|abrir|ver|encontrar|con|ni|mas)"
_NO = re.compile(
    rf"(?: (?:no|tampoco|ya no|nunca)) {_CL}(?:(?:creo que|vamos a|voy a|va a|hay forma de que|me veo|se si) )?{_CL}(?:{_NO_GO[3:-1]}|(?:estare|estaremos)|(?:estoy|estamos)(?= ,| $| ahi| ese| este| en la ciudad| disponibles?)|poder (?:ir|llegar|asistir|venir|estar|acompañar[a-z]*|ser)|poder|ir|asistir|estar|va a poder ser|va a ser posible|va a poder|podra ser|me apunto|nos apuntamos|apunto|apuntamos|sumo|sumamos|prendo)(?! (?:a |al )?{_FOOD}(?= |$))(?! (?:que )?(?:segur|de acuerdo|list|embarazad|para |content|convenc|enterad|tan |muy |sol[oa]s?(?: |$)|tarde|atrasad|lejos|bien|mal))(?= |$)"
    rf"|{_START}{_LEAD} (?:imposible|ni modo|(?:yo |nosotros )?paso(?:mos)?(?: (?:esta vez|de esta|por esta|por esta vez))?|pasamos|lamentablemente no|desgraciadamente no|tristemente no|esta vez no|esta no|ausentes?|al final no|mejor no|va a ser que no|me temo que no|que va|ni de broma|ni hablar|negativo|nop|pues no|yo no|nosotros no|conmigo no cuenten|declino(?: la invitacion)?|declinamos)(?= ,| \.| $| pero| porque| que | gracias|$)"
    r"|^ no(?= ,| \.| $| pero)|^ (?:nop|nel|nah|nope|no no|no po|uy no|ay no)(?= |$)|^ no (?=(?:estoy|ando) (?:castigad|enferm|mal|fuera|trabajando|ocupad|lejos))"
    r"| (?:no (?:me|nos) (?:va a dar|da|dara|va a alcanzar|alcanza|queda) (?:el )?tiempo(?: de [a-z]+)?|no nos veremos|no nos vemos|(?:sera|quedara|lo dejo|lo dejamos) (?:en|para) (?:otra|la proxima)|(?:en|a la|para la) (?:otra|proxima) (?:sera|vez)|otra vez sera|(?<! no )(?<! loca )(?<! loco )(?<! broma )(?<! pedo )(?<! nunca )(?<! muerto )(?<! muerta )(?:me|nos) l[oa] (?:pierdo|perdemos|perdere|voy a perder|vamos a perder)|(?:me|nos) (?:tengo|tenemos|tendre|tendremos) que perder"
    r"|(?:me|nos) (?:bajo|bajamos|borro|borramos|abro|abrimos|rajo|rajamos|desapunto|desapuntamos|caigo de la lista|disculpo|excuso)(?= ,| \.| $| de(?:l)? (?!slaw)| esta| por| que| porque| al final)|(?:me|nos) (?:es|resulta|sera|queda) imposible|imposible (?:ir|llegar|asistir|para mi|para nosotros|que (?:vaya|vayamos)|ese dia|ese finde|el [a-z]+ )|(?:lamento|lamentamos|siento|sentimos) (?:mucho )?(?:no (?:poder|ir|estar)|tener que)"
    r"|(?:cancel|borr|quit|tach|sac|baj|descont|desapunt)(?:ame|enme|adme|enos|ennos|adnos|a me|anos|arme)(?= |$)(?! (?:el|la|los|las|lo|mi|mis|un))|no (?:me|nos) (?:cuenten|cuentes|conteis|anoten|esperen|apunten|anotes|esperes)|no (?:cuenten|cuentes|conteis|cuenteis|contes) con (?:nosotr[oa]s|mi familia|los [a-z]+)|no contamos(?= ,| $)|no (?:se nos|se me) (?:da|arma|hace)|no me da la (?:vida|agenda)"
    r"|(?:no la|no lo) (?:armo|hago|libro|logro)|tuve que cancelar|tenemos que cancelar|tengo que cancelar|he de cancelar|hay que cancelar lo mio|cancelo(?= $| ,| mi)|no (?:me|nos) (?:es|sera|va a ser) posible|no (?:va|iba) a (?:poder ser|ser posible)|no podra ser|ya (?:tengo|tenemos) (?:otro )?(?:plan|planes|compromiso|boda|viaje)|me (?:salio|surgio|toca|ha salido|ha surgido|cayo) (?:un |una |el |la )?(?:viaje|compromiso|imprevisto|turno|guardia|trabajo|trabajar|chamba|laburo|reunion|otra cosa)"
    r"|(?:estoy|estamos|estare|estaremos|ando|andamos|andaremos) (?:fuera|afuera|de viaje|de guardia|de turno|fuera de la ciudad|en otra ciudad|de vacaciones|en el pueblo|en el extranjero)(?= |$)|no (?:me|nos) (?:veran|vereis|ven)|me quedo (?:en casa|sin ir)|nos quedamos (?:en casa|sin ir)|no (?:me|nos) animo|no (?:me|nos) animamos|falto|no cont(?:ad|ais) con)(?= |$)"
)
_NO_MORE = re.compile(
    r" (?:(?:me|nos) coincide (?:con|justo)[a-z ]*|(?:me|nos) toca (?:trabajar|cuidar|currar|estudiar|viajar|[a-z]+ar)(?! (?:a mi|a nosotros|el postre|la|el|los|las|pan))[a-z ]*|se (?:me|nos) (?:complica|complico|va a complicar|hace (?:dificil|imposible|cuesta arriba)|atraviesa|atraveso|cruzo|cruza|junto|juntan?)(?! (?:el|la|los|las|un|una|lo de) )|(?:me|nos) (?:coge|pilla|agarra|cacha|toma|encuentra) (?:fuera|lejos|de viaje|trabajando|en [a-z]+|de (?:guardia|vacaciones|turno|mudanza))|no (?:me|nos) (?:cuadra|acomoda|va bien|viene bien|queda bien|encaja|sirve la fecha|dan (?:el|permiso|libre)[a-z ]*|dieron (?:el dia|permiso|libre)|sueltan|dejan (?:ir|salir|en el trabajo)|alcanza para ir|da la agenda|da el cuerpo)|(?:me|nos) (?:viene|va|queda|cae) (?:fatal|mal|lejos|imposible|muy mal|muy lejos)|(?:tendre|tendremos|tengo|tenemos) que (?:trabajar|currar|laburar|viajar|estudiar|quedarme|quedarnos|faltar|fallar(?:les|te|os)?|declinar|decir que no|cancelar|rechazar)|(?:les|te|os) (?:quedo|quedamos|voy a quedar) (?:mal|debiendo)|(?:me|nos) (?:disculpan|excusan|disculpais|disculpas)(?= |$)|ya (?:quede|quedamos|habia quedado|habiamos quedado) (?:con|en|para)[a-z ]*|no (?:me|nos) (?:suelta|deja|sueltan|dejan)(?= ?(?:$|,|ir|salir|faltar))|cancel(?:a|en|ad|o|e) (?:lo (?:mio|nuestro)|mi (?:lugar|asistencia|participacion|reserva))|nanai|nones|nel pastel|nel|ni modo(?= |$)|me (?:da|late|huele) que no|otro dia sera|con todo el dolor [a-z ]*no|no (?:tengo|tenemos|hay|encuentro|consigo|encontramos) (?:con )?quien (?:me|nos|se|cuide|dejar|quede|lleve)[a-z ]*|no hay manera|no hay forma|no hay caso|nos es imposible|no sera posible|no es posible|no me es factible|lo dejamos para otra|declino|rechazo la invitacion|no (?:cuenten|cuente|cuentes|conteis) con (?:mi|nuestra) (?:presencia|asistencia)|(?:tengo|tenemos|lo tengo|lo tenemos) (?:pillado|ocupado|cogido|comprometido|complicado|tomado|lio|movida|jaleo)|ese (?:dia|finde) (?:lo )?(?:tengo|tenemos) (?:pillado|ocupado|cogido|comprometido|lleno|complicado)|(?:no )?(?:les|os|te) fallo(?= ,? ?(?:esta|porque|tengo|ese))|no voy ni)(?= |$)"
)
_YES_MORE = re.compile(
    r"(?:^|(?<= ,)|(?<= si)|(?<= yo)|(?<= y)|(?<= que)|(?<= pues)|(?<= claro)|(?<= nosotros)|(?<= ya)|(?<= ok)) (?:(?:estoy|estamos) (?:dentro|adentro|in|apuntad[oa]s?|puest[oa]s?|list[oa]s? para ir|mas que apuntad[oa]s?|fij[oa]s?)|(?:anotad|apuntad|puest|list)(?:isim[oa]s?)(?= |$)|puest[oa]s?(?= $| ,| y )|mas que (?:apuntad|puest)[oa]s?|(?:reserv|guard|apart)(?:en|a|ad|e)(?:me|nos)? (?:un |una |el |mi |[0-9]+ )?(?:sitio|sitios|lugar|lugares|silla|sillas|plato|platos|asiento|espacio|mesa|hueco|puesto|puestos|trozo|cachito|pedazo)|(?:reserv|guard|apart)(?:a|en|ad)(?:me|nos)(?= $| ,)|me (?:dejo caer|asomo|planto (?:ahi|alli|alla)|tienes ahi|teneis ahi|incluyo|acomoda|cuadra|sirve|va de lujo|va perfecto|va genial|viene (?:genial|perfecto|de perlas|de lujo|bien|fenomenal|estupendo)|queda (?:perfecto|bien|genial))(?= |$)|nos (?:asomamos|acomoda|cuadra|sirve|viene (?:genial|perfecto|bien|fenomenal)|queda (?:perfecto|bien))(?= |$)|ese dia (?:si )?(?:puedo|podemos|estoy libre|estamos libres)(?= $| ,| y)|(?:estoy|estamos|tengo|tenemos) (?:libre|libres|la agenda libre|el dia libre|disponibles?)(?= $| ,| y| ese)|no se diga mas|firme(?= $| ,)|obvio microbio|(?:mil|cien) veces si|paso a (?:saludar|verlos|veros|verlas|darles|dar)[a-z ]*|ni (?:dudarlo|lo dudes|lo duden|lo dudeis)|de ley|de fijo|fijo que (?:si|voy|vamos)|si o si|eso es un si|es un si|ya (?:rugiste|vas|dijiste|estas|quedo)(?= |$)|arre(?= |$)|hagale|haganle|sipi|sip|sipo|sep|yup|obvi|obvis|al toque|como un clavo|presentisim[oa]|(?:doy|damos) (?:el|un) si|(?:cuent[ae]n?|contad|cuente) con (?:mi|nuestra) (?:presencia|asistencia)|confirmo (?:mi |nuestra )?(?:presencia|asistencia)|ya (?:estoy|estamos) (?:ahi|alli|alla|contando los dias|afilando|preparando)|(?:sum|met|incluy|agreg|pon|cont)(?:ame|enme|adme|edme|anme|eme|anos|ennos|adnos|ednos|enos)(?= $| ,| en la lista| tambien| por favor| porfa))(?= |$)"
)
_MAYBE_MORE = re.compile(
    r" (?:(?:ahi|ya|yo|al rato|luego|despues|pronto|mañana|en (?:un )?rato) (?:les|te|os|lo) (?:digo|aviso|confirmo|cuento|confirmamos|avisamos|decimos)|(?:te|os|les) (?:digo|aviso|confirmo|cuento) (?:al rato|en|mas|ya|apenas|pronto|a la|antes|esta|este|por|cualquier|cuando)[a-z ]*|(?<!nos )(?:ahi|ya|luego|despues) (?<!nos )(?:vemos|veo|vere|veremos)|(?<!nos )vemos(?= $| ,)|(?:yo )?(?:creo|digo|diria|imagino|supongo|parece|me parece|me late|calculo) que (?:si|sí|vamos|voy|puedo)|casi seguro(?: que)?(?: si| voy| vamos)?(?= |$)|lo mas seguro(?: es)? que(?= )|es (?:muy )?(?:probable|posible) que (?:si|vaya|vayamos|pueda|podamos|llegue|no)|(?:hare|haremos|voy a hacer|hago) (?:el intento|lo imposible|todo lo posible|un esfuerzo|el esfuerzo)|tengo mis dudas|[0-9]{2} ?(?:%|por ciento) (?:si|seguro|de probabilidad|que si)?|[0-9]{2}/[0-9]{2}|(?:deja|dejen|dejad|dejame|dejenme|dame|denme|dadme) (?:checo|veo|reviso|miro|pregunto|consulto|hasta|unos dias|y (?:te|les|os)|tiempo|que (?:vea|cheque|revise|mire|pregunte|consulte))[a-z ]*|quien quita|lo (?:vemos|veremos)(?= $| ,| mas| luego| despues)|(?:esper(?:en|ad|a)|les debo|os debo) (?:mi|la) (?:respuesta|confirmacion)|no descarto|no (?:les|os|te) (?:puedo )?(?:prometer|prometo|garantizo|aseguro)(?: nada)?|tengo que (?:cuadrar|coordinar|revisar|organizarme|hablar con)[a-z ]*|me falta (?:ver|confirmar|saber)|por confirmar|sin confirmar|estoy viendo si|estamos viendo si|en veremos|pendiente(?= $| ,| de)|(?:pongo|ponme|ponganme|apuntame|anotame|anotenme|apuntadme) (?:como |en |con |de )?(?:un )?(?:quizas?|tal vez|duda|dudoso|dudosa|posible|interrogacion|pendiente))(?= |$)"
)
"""More ways to say it, without grammar."""
_MAYBE = re.compile(
    r" (?:tal vez|talvez|quiza|quizas|a lo mejor|igual y|chance(?: y)?|a la mejor|de pronto(?= (?:si|voy|puedo|vamos))|puede que|puede ser(?! (?:grave|mortal|fatal|peligros|muy|seri|en ))|capaz(?! de)(?: que(?: si)?)?|no (?:lo )?se(?: si| aun| todavia)?(?= ,| $| si | aun| todavia| pero| seguro|\.)|no lo (?:tengo|tenemos|veo|vemos) (?:muy |nada |tan )?claro|(?:todavia|aun) no (?:lo )?(?:se|sabemos|tengo claro|confirmo|puedo (?:confirmar|decir))|no (?:lo )?(?:sabemos|sabria)(?! que)|no (?:te |les |os |le )?(?:se|sabria|sabemos|puedo|sabria) (?:decir|confirmar|asegurar)(?:te|les|os|le)?|depende|dependo|dependemos|segun (?:salga|como|me|nos|el|la|ande|si)"
    r"|(?<!a ver )si (?:puedo (?:cambiar|escaparme|arreglar|salir|voy|ir)|podemos|puedo|logro|consigo|alcanzo|salgo|llego|me (?:dan|da|dejan|suelta|sueltan|alcanza|recupero|cambian|libero)|nos (?:dan|da|dejan)|mi (?:jefe|jefa|marido|mujer|esposo|esposa|novi[oa]|turno|suegra|hijo|hija|madre|niñera|canguro)|encuentro|encontramos|no (?:me toca|tengo|trabajo|llueve|surge|pasa nada|hay (?:imprevistos|novedad))|el (?:trabajo|peque|jefe|niño|turno|medico|coche)|la (?:peque|niña|niñera|canguro|jefa))"
    r"|lo intento|lo intentare(?:mos)?|intentare(?:mos)?|intento (?:ir|llegar|pasar)|voy a (?:intentar|tratar)|vamos a (?:intentar|tratar)|tratare(?:mos)? de|hare(?:mos)? lo posible|hago lo posible|no (?:les |te |os |lo )?(?:prometo|prometemos|aseguro|garantizo)(?: nada)?|(?:les|te|os|lo|ya) (?:confirmo|confirmamos|confirmare|aviso|avisamos|avisare|digo|decimos|dire)(?= $| ,(?! [a-z]+ que)| luego| mañana| despues| mas| el | pronto| en | cuando| si | cerca| apenas| manana| hoy| ya)|aviso (?:luego|mañana|despues|el)|luego (?:te |os |les )?(?:confirmo|aviso|digo)|confirmo (?:luego|mañana|mas|despues|el|en|pronto|al)"
    r"|lo mas probable|probablemente|posiblemente|seguramente(?! si)|no (?:estoy|estamos) (?:muy |del todo |tan )?segur[oa]s?|ni idea|no tengo (?:ni )?(?:idea|claro)|ya veremos|veremos|vamos viendo|ya (?:os|te|les) (?:digo|dire|cuento)|a ver si (?:puedo|podemos|llego|llegamos|me|nos|logro|logramos|salgo|voy|vamos|alcanzo|consigo)|(?:en|de) principio (?:si|voy|vamos|me apunto|cuenta|contad)|en principio|creo que (?:si|voy|vamos|puedo|podemos|podre|podremos|ire|llego)|espero (?:poder|que si|ir)|esperamos poder|ojala (?:pueda|podamos)|(?:tengo|tenemos|tendria|tendriamos) que (?:ver|mirar|checar|chequear|consultar|preguntar|hablarlo|organizar|pensarlo|confirmar)"
    r"|dej(?:ame|enme|adme|a|en) [a-zñ]+(?:ar|er|ir)(?:lo|la|los|me|nos)?(?= y | ,|$| con| en| a )|dej(?:ame|enme|adme|a que|en que) (?:ver|checar|chequear|mirar|consultar|preguntar|consultarlo|pensarlo|hablarlo|que)|lo (?:hablo|consulto|miro|checo|veo|pienso|platico|charlo) (?:con|y|en)|me lo pienso|lo pensare|lo voy a pensar|esta (?:complicado|dificil|por verse)|(?<!, )(?:mitad|50) y (?:mitad|50)|50 50|50/50|ni si ni no|quien sabe|sabe dios|a saber|igual (?:si|voy|vamos|puedo|me paso)(?= |$)|estoy en duda|tengo dudas|en veremos|pendiente de)(?= |$|,)"
)
_HERE = r"(?:ahi|alli|alla|aca|aqui|por ahi|por alla|por alli|por aca)"
_BE = r"(?:estare|estaremos|estoy|estamos)(?= (?:ahi|alli|alla|aca|aqui|con (?:ustedes|vosotros)|presentes?|puntual(?:es)?|sin falta|(?:tod[oa]s )?l[oa]s [0-9]|list[oa]s? para|(?:su|mi) [a-z]+ y yo|dentro|en (?:tu|su|la) (?:casa|fiesta|cena))(?= |$))|(?:estare|estaremos)(?= ,| $| a las| el | seguro| encantad| con (?:mi|los|las) )"
_GO_ON = rf"{_START}{_LEAD} (?:{_CL}{_WENT}|{_CL}(?:{_BE})|(?:vamos|voy) a (?:ir|estar|asistir|venir|caer|acudir)|(?:quiero|queremos|pienso|pensamos|planeo|planeamos|confirmo que|confirmamos que) {_TO_COME}|(?:si )?(?:puedo|podemos|podre|podremos) {_TO_COME}(?= ,| $| y | con | ese| el| \.)|si (?:puedo|podemos)(?= ,| $| y )){_AWAY}(?= |$)"
_YES = re.compile(
    rf"{_GO_ON}"
    rf"|{_START}{_LEAD} (?:si|claro(?: que si)?|claro que (?:voy|vamos)|por supuesto(?: que (?:si|voy|vamos))?|obvio(?: que si)?|desde luego(?: que si)?|ok si|dale|va que va|sale|sale y vale|simon|orale|de una|a huevo|a guevo|va|listo|hecho|de cabeza|faltaba mas|no faltaba mas|como no|sin (?:duda|dudarlo|falta)|segurisimo|fijo|fija|seguro(?: que (?:si|voy|vamos))?|cien por ciento|al cien|con (?:mucho |muchisimo )?gusto|encantad[oa]s?(?: de (?:ir|asistir|acompañar[a-z]*))?|sera un placer|un placer|es un placer|que si|presente|presentes|me (?:late|copa|parece bien|va bien|viene bien|va perfecto|viene perfecto)|nos (?:late|copa|va bien|viene bien)|yes|afirmativo|positivo|aceptamos|acepto|claro,? cuenten|si quiero|si queremos|si si|te digo que si|le digo que si|les digo que si|mi respuesta es si|pues si|yo si|nosotros si|me encantaria ir y (?:voy|ire))(?: (?:si|claro|vamos|voy|ahi))*(?= ,| $|$| y | \.| que | gracias| alli| ahi| estaremos| estare| por supuesto)"
    r"| (?:cuent[ae]n?(?:me|nos)? (?:con(?:migo| nosotros| nosotras| mi familia)|me)|cuent[ae]n?(?:me|nos)(?: |$)|cuent[ae]n?(?: con)? [0-9]+|contad (?:conmigo|con nosotros|con nosotras|con [0-9]+)|conta (?:conmigo|con nosotros)|cont(?:ame|anos)(?= ,| $| adentro| entre| dentro)|me (?:apunto|sumo|prendo|anoto|uno|agrego|incluyo|acoplo|engancho|lanzo|animo)|(?:yo )?(?:si )?le (?:entro|entramos|caigo|caemos|atoro|llego|llegamos)(?! (?:a la|a los|un|una|al))|(?:les|te|os) (?:caigo|caemos|llego|llegamos)(?= |$)(?! tarde)|nos (?:lanzamos|animamos)|nos (?:apuntamos|sumamos|prendemos|anotamos|unimos|agregamos|acoplamos|enganchamos)|(?:apunt|anot|inclu[iy]|agreg|sum|agend)[a-z]*(?:dme|nme|dnos|nnos)(?= ,| $| a | en | para la| tambien| por)|(?:apunta|anota|agrega|suma)(?:me|nos)(?= ,| $| a | en | para la| tambien)|confirm(?:o|amos|ando|ad[oa]s?|adisim[oa]s?)(?! (?:luego|mañana|mas|despues|el |en |pronto|al |si |que no))|asistencia confirmada|doy el si|decimos que si"
    rf"|(?:no|ni de broma|ni loc[oa]s?|ni muert[oa]s?|ni en pedo|nunca) (?:me|nos) l[oa] (?:pierdo|perdemos|perdere|perderia|perderiamos|voy a perder|vamos a perder|perderemos)|(?:no|ni loc[oa]|ni de broma) (?:falto|faltamos|faltare|faltaremos)(?: ni [a-z]+)?|como me l[oa] voy a perder|ni loc[oa]s? (?:me|nos) l[oa] (?:pierdo|perdemos|perderia)|sin falta|(?:ahi|alli|alla)(?: que)? (?:nos|me) (?:plantamos|planto|presentamos|presento|apuntamos|apunto)|nos vemos (?:el|este|en|entonces|a las|ese dia|pronto|alli|ahi|alla|aca|mañana)|{_HERE} (?:estaremos|estare|estamos|estoy|nos vemos|voy|vamos|llego|llegamos|andamos|caigo|caemos|andaremos|andare|me tienen|nos tienen|nos teneis|me teneis|me tendran|nos tendran|nos veremos|caere|les caigo|te caigo|les caemos|les llego|me veran|nos veran|me vereis|nos vereis|iremos|ire)|nos vemos {_HERE}|(?:me|nos) (?:tendreis|tendran|tienen|teneis) {_HERE}|aceptamos (?:la invitacion|encantados)|acepto (?:la invitacion|encantad[oa])|con (?:mucho )?gusto (?:asist|voy|vamos|ire|iremos|acept|los|te|os)[a-z]*|me encanta la idea|no (?:puedo|podria) (?:faltar|perdermel[oa])|no podriamos (?:faltar|perdernosl[oa])|no podemos (?:faltar|perdernosl[oa]))(?= |$)"
)
_DOUBT_NO = re.compile(
    r" (?:creo|me temo|pienso|parece|supongo) que (?:no|va a ser que no) |^ (?:lo veo|esta|veo) (?:dificil|complicado|jodido|negro)|^ no creo $|^ no creo (?=,)|(?:dudo|no creo)(?: (?:mucho|poder|que (?:pueda|podamos|vaya|vayamos|llegue|lleguemos)))+ | lo dudo "
)
_THAT_DAY = r"(?:(?:ese|este) (?:dia|finde|fin de semana|fds|sabado|domingo|viernes|jueves)|esa (?:fecha|noche|tarde)|el (?:sabado|domingo|viernes|jueves)|para (?:esa fecha|ese dia|entonces)|justo ese dia)"
_ELSE = r"(?:boda|bodas|bautizo|comunion|cumple|cumpleaños|compromiso|compromisos|viaje|vuelo|evento|guardia|turno|turnos|examen|examenes|parcial|partido|cita|reunion|junta|fiesta|concierto|entierro|funeral|velorio|misa|graduacion|curso|ensayo|mudanza|clase|clases|trabajo|chamba|laburo|curro|plan|planes|visita|quince|xv|retiro|torneo|carrera|operacion|consulta|terapia|otra cosa|otro asunto|cosas|servicio)"
_BUSY = re.compile(
    rf" (?:nos vamos|me voy|nos iremos|salimos|viajamos|viajo) (?:a|de|para|fuera) (?:[a-zñ]+ ){{0,4}}{_THAT_DAY}(?= |$)"
    rf"| {_THAT_DAY} (?:es|son|sera|cae|caen|tengo|tenemos|hay|toca) (?:(?:el|la|un|una|los|las|mi|nuestra?|otro|otra|ya|que ir a|justo) )*{_ELSE}(?= |$)"
    rf"| {_THAT_DAY} (?:(?:yo|nosotros|me|nos|ya|justo|mismo|que|si|tambien) )*(?:trabaj[oa](?:mos)?|curr[oa](?:mos)?|labur[oa](?:mos)?|chambe[oa](?:mos)?|camell[oa](?:mos)?|viaj[oa](?:mos)?|manejo|entreno|entrenamos|juego|jugamos|estudio|rindo|rendimos|vuelo|volamos|doy clases?|presento|operan|me operan|me caso|salgo|salimos|estoy|estamos|estare|estaremos|tengo|tenemos|toca|cuido|cubro|entro)(?= |$)(?! (?:ahi|alli|libre|disponible|listos?|con (?:ustedes|vosotros)))"
    rf"|(?:^|(?<= ,)|(?<= que)|(?<= porque)) (?:(?:uy|ay|no|es que|justo|ya|yo|que pena|perdon|,) )*(?:trabaj[oa](?:mos)?|curr[oa](?:mos)?|labur[oa](?:mos)?|viaj[oa](?:mos)?|(?:estoy|estamos|estare|estaremos) (?:trabajando|currando|viajando|laburando|ocupad[oa]s?|de [a-z]+|fuera))(?: (?:justo|en))* {_THAT_DAY}(?= |$)"
    rf"|^ (?:(?:uy|ay|es que|justo|ya|yo|nosotros|perdon|,) )*(?:(?:tengo|tenemos|tendre|tendremos) (?:(?:un|una|otro|otra|el|la|ya|que ir a|los|las|varias|mi|nuestra?) )*{_ELSE}|(?:me|nos) toca (?:trabajar|guardia|turno|currar|laburar|chambear)|(?:estoy|estamos|estare|estaremos) (?:fuera|afuera|de viaje|de guardia|de vacaciones) )(?= |$)"
    r"|^ (?:(?:para|a|en|sera|hasta|lo dejo|lo dejamos|quizas?|ojala) )*la proxima (?:si |vez |sera )*$|^ (?:sera |en |para )?otra (?:vez|ocasion)(?: sera)? $"
)
"""What else one has on that day: a no, where no other answer is told."""
_STILL = re.compile(r" (?:pero|aunque|igual|llego|despues|antes|temprano|luego|hasta las|a las|tarde) ")
_ACCENTED = "sí"
_ASKED = {
    Answer.YES: r"(?:(?:si|sip|claro|vale|dale|va|ok|okey|okay|perfecto|genial|obvio|simon|orale|sale|listo|por supuesto|de una|hecho|venga|seguro|correcto|exacto|eso|asi es|afirmativo|confirmado|va que va|pues|que si|ya|adelante|bueno|cierto|de acuerdo|eso es|yo|nosotros|tambien|las 2|los 2|todas|todos|hazlo|ponlo|yes|gracias) ?,? ?)+",
    Answer.NO: r"(?:(?:no|nop|nel|que va|para nada|ni hablar|negativo|nada|ninguno|ninguna|todavia|gracias|mejor|pues|paso|de eso nada|en absoluto|asi|dejalo|dejalo asi|cancela|ni de broma|incorrecto) ?,? ?)+",
    Answer.MAYBE: r"(?:(?:quiza|quizas|tal vez|a lo mejor|puede ser|puede|depende|no se|ni idea|capaz|todavia|aun|mmm|pues) ?,? ?)+",
}


def read_answer(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The writer's own answer; a question is none."""
    if sentence.question:
        return []
    text = sentence.text
    if context.replying_to == "bot" and _TAKEN.match(text):
        return []  # it was told something, and says so
    if context.asked in ("answer", "yes-no"):
        for answer in (Answer.MAYBE, Answer.YES, Answer.NO):
            if re.fullmatch(f" {_ASKED[answer]}", text.rstrip(" ,") + " "):
                start, end = sentence.span(0, len(sentence.tokens))
                return [SetAnswer(context.writer, answer, start=start, end=end, confidence=0.95)]
    if (later := _NEXT_TIME.match(text)) is not None:
        start, end = sentence.span_of(later)
        return [SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.88)]
    maybe = _MAYBE.search(text) or _MAYBE_MORE.search(text)
    no, yes = _NO.search(text) or _NO_MORE.search(text), _YES.search(text) or _YES_MORE.search(text)
    if maybe is not None and re.search(r" yo (?:y|con|\+|mas) $", text[: maybe.start() + 1]):
        maybe = None  # "yo y quizá 3 amigos": perhaps they, but surely me
    if maybe is None and (held := _IF.search(text)) is not None and not _accented_if(sentence, held):
        maybe = held
    if yes is None and no is None and maybe is None:
        yes = _AT_LAST.search(text) or (_I_CAN.match(text) if context.addressed else None)
    unsure = _DOUBT_NO.search(text)
    if unsure is not None and (no is None or no.start() >= unsure.start()):
        start, end = sentence.span_of(unsure)
        return [SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.72)]
    if no is not None and yes is not None and yes.start() <= no.start() and no.end() <= yes.end():
        no = None  # "ni loca me lo pierdo"
    if no is not None and yes is not None and no.start() <= yes.start() < no.end():
        yes = None  # "no voy"
    if (
        maybe is not None
        and no is not None
        and no.start() < maybe.start()
        and re.search(r" (?:pero|para la|otra) ", text[no.start() :]) is None
    ):
        maybe = None  # "no puedo, a ver si a la próxima"
    if maybe is not None and no is not None and maybe.start() <= no.start() and no.end() <= maybe.end():
        no = None
    if yes is not None and no is not None and maybe is None:
        first, then = (yes, no) if yes.start() < no.start() else (no, yes)
        if (
            " pero " in text[first.start() : then.end()]
            or " aunque " in text[first.start() : then.end()]
            or "," in text[first.end() - 1 : then.start() + 1]
        ):
            later, said = (then, Answer.NO if then is no else Answer.YES)
            start, end = sentence.span_of(later)
            return [SetAnswer(context.writer, said, start=start, end=end, confidence=0.82)]
    if maybe is not None and yes is not None and maybe.start() == yes.start() and _surely(sentence, maybe):
        maybe = None  # "sí podemos ir"
    if maybe is None and no is None and yes is None and (busy := _BUSY.search(text)) and not _STILL.search(text):
        start, end = sentence.span_of(busy)
        return [SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.86)]
    if maybe is None and no is None and yes is None and context.replying_to == "board" and _ME_TOO.match(text):
        start, end = sentence.span(0, len(sentence.tokens))
        return [SetAnswer(context.writer, Answer.YES, start=start, end=end, confidence=0.86)]
    if context.asked == "bring" and no is None and yes is None and re.fullmatch(r" (?:(?:pues|todavia|aun|la verdad|,) )*(?:no (?:lo )?se|ni idea)(?: (?:todavia|aun|bien|que))* ", text):
        return []  # of the dish, not of coming
    for found, answer, sure in ((maybe, Answer.MAYBE, 0.9), (no, Answer.NO, 0.92), (yes, Answer.YES, 0.92)):
        if found is None:
            continue
        start, end = sentence.span_of(found)
        conditional = answer is Answer.MAYBE and " si " in text
        return [SetAnswer(context.writer, answer, conditional, start=start, end=end, confidence=sure)]
    return []


_GOING = r"(?:voy|vamos|ire|iremos|caigo|caemos|llego|llegamos|puedo ir|podemos ir|podria ir|me apunto|nos apuntamos|me sumo|contad conmigo|cuenten conmigo)"
_IF = re.compile(
    rf"(?:^|(?<= ,)|(?<= y)|(?<= pero)|(?<= solo)) si (?!voy|vamos|quier|queres|queris|gust|les|os|te|hace falta|falta|cuent|contad|claro|ire|va |hay que|necesit|alguien|nadie|señor|,)[a-zñ]+ (?:[a-zñ0-9]+ ){{1,7}},? ?(?:(?:entonces|si|ahi|pues|yo|de una|seguro) )*{_GOING}(?= |$)(?! (?:a|con|por) )"
    rf"| {_GOING},? (?:solo )?si (?!quier|queres|gust|les|os|te|hace falta|falta|necesit|,)(?:me|nos|puedo|el|la|mi|no|consigo|encuentro|logro|salgo|cambio|termino|acabo|mejora|sale|alcanza|hay)(?= )"
)
"""Coming on a condition: "si cambio el turno, voy"."""
_AT_LAST = re.compile(
    r"^ (?:(?!no |nunca |ni |tampoco |si |donde |cuando |como |que |porque |por |adonde |hasta |para |tambien |ya )[a-zñ,]+ ){1,6}(?:voy|vamos|iremos|ire|asistire|asistiremos|asistimos|estaremos|estare)(?= $)"
)
""" "Habla causa, de todas maneras voy": it ends with coming and says no no."""


_I_CAN = re.compile(r"^ (?:(?:yo|nosotr[oa]s|si|ese dia|ahi) )*(?:puedo|podemos|podre|podremos) $")


def _accented_if(sentence: Sentence, found: re.Match[str]) -> bool:
    first, last = sentence.token_range(found)
    return any(t.plain == "si" and t.raw.lower() == _ACCENTED for t in sentence.tokens[first:last])


_TAKEN = re.compile(
    r"^ (?:(?:va|vale|dale|ok|okey|okay|listo|sale|orale|hecho|perfecto|genial|venga|de acuerdo|bueno|entendido|ya|excelente|buenisimo|super|anotado|enterad[oa]|recibido|arre|joya) ?,? ?)+ ?$"
)
_NEXT_TIME = re.compile(r"^ (?:(?:a|en|para|sera|hasta|pero|ni modo|,) )*la proxima(?: vez)?(?: ,)?(?: (?:sin falta|seguro|si|si voy|si vamos|sera|ahi estare|ahi estaremos|no me la pierdo|no falto))* $")
_ME_TOO = re.compile(r"^ (?:(?:y|pues|si|,) )*(?:yo tambien|nosotr[oa]s tambien|tambien yo|tambien nosotr[oa]s|y yo) (?:, )?$")


def _surely(sentence: Sentence, found: re.Match[str]) -> bool:
    """Whether "si puedo" says that one can: with its accent, or by itself with the verb of coming."""
    first, _ = sentence.token_range(found)
    token = sentence.tokens[first]
    if token.plain != "si":
        return False
    if first and sentence.tokens[first - 1].plain in ("yo", "nosotros", "nosotras", "dia", "final", "vez", "pues", "claro"):
        return True  # "yo si puedo"
    alone = first == 0 and 3 <= len(sentence.tokens) <= 4 and "," not in sentence.text
    return token.raw.lower() == _ACCENTED or alone
