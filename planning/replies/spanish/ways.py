"""The ways to offer something: verbs of bringing, what stands for one, and what only looks like an offer."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.spanish.lexicon import any_of
from planning.replies.spanish.verbs import any_form

ME = any_form("bring", "1s", "1p", "f1")
_INF, _GER = any_form("bring", "inf"), any_form("bring", "ger")
_CLITIC = r"(?:(?:les|le|te|os|se|me|nos|lo|la|los|las) )*"
_ADV = r"(?: (?:yo|nosotros|nosotras|tambien|ya|ademas|entonces|mejor|luego|siempre|igual|solo|solamente|de paso|encima|mismo|misma|pues|les|os|te|nos|gustosamente|gustoso|gustosa|encantado|encantada|con gusto|por ejemplo|aparte|claro|en (?:el|la) (?:super|supermercado|panaderia|pasteleria|mercado|tienda|carniceria)))*"
_CAN = r"(?:puedo|podemos|podria|podriamos|podre|podremos|voy a|vamos a|quiero|queremos|quisiera|quisieramos|me gustaria|nos gustaria|me encantaria|pienso|pensamos|pensaba|estaba pensando en|me toca|nos toca|me animo a|nos animamos a|me ofrezco a|nos ofrecemos a|me comprometo a|prometo|tengo pensado|tenemos pensado|tenia pensado|quede en|quedamos en|he decidido|prefiero|preferimos|me encargo de|nos encargamos de|me ocupo de|soy capaz de|me apunto a|nos apuntamos a|paso a)"
VERB = re.compile(
    rf" (?:{_CLITIC}(?:{ME}){_ADV}(?= )(?! a (?:mi|la|el|los|las|tu|su|mis|un|una|otr[oa]s?|[0-9]+|ambos|todos) )(?! (?:cont|que (?:ver|hacer)|a (?:{_INF}) ))"
    rf"|{_CAN}{_ADV} (?:{_INF})(?:les|te|os|le|me|nos|lo|la|los|las)?(?= )"
    rf"|(?:estoy|estamos|ando|andamos) (?:{_GER})(?= )|{_CAN}{_ADV} (?:encargarme|encargarnos|ocuparme|ocuparnos|hacerme cargo|hacernos cargo) (?:de|del)(?= )"
    r"|(?:me|nos) (?:encargo|ocupo|encargamos|ocupamos|hago cargo|hacemos cargo|encargare|encargaremos|ocupare|pido|pedimos|adjudico)(?: yo| nosotros| tambien)* ?(?:de|del)?(?= )"
    rf"|(?:paso|pasamos|voy|vamos|ire|pasare) (?:yo |nosotros )?(?:(?:a )?por|comprando|a (?:comprar|buscar|recoger)|trayendo|recogiendo|buscando)(?= (?:el|la|los|las|un|una|unos|unas|[0-9]+|mas) )(?! (?:el|la|los|las|un|una) (?:niñ|nen|peque|camino|calle|centro|mañana|tarde|noche|casa|{any_of('kin')}))"
    rf"|(?:(?:puedo|podemos|voy a|vamos a|podria|quiero) )(?:yo )?(?:pasar por|recoger|pasar a (?:comprar|recoger))(?= )(?! (?:ti|ustedes|vos|mi|el|la|los|las|tu|tus|mis|un|una|[0-9]+ (?:personas|niñ)|{any_of('kin')}) )"
    r"|(?:tengo|tenemos) (?:ya )?(?:list[oa]s?|preparad[oa]s?|hech[oa]s?|pensad[oa]s?|comprad[oa]s?|encargad[oa]s?|apartad[oa]s?)(?= )|(?:sumo|sumamos|agrego|agregamos|añado|añadimos|incluyo|recojo|recogemos)(?: yo| nosotros| tambien)*(?= )(?! (?:a |al |[0-9]+ (?:$|,|mas|personas|en total|con|adult|niñ)))"
    r"|(?:me|nos) (?:marco|marcamos|curro|curramos|mando|mandamos|tiro|rifo|rifamos|aviento|aventamos|luzco(?: con)?|saco|estreno con|comprometo con|comprometemos con|ofrezco con|ofrezco para)(?= (?:con |a hacer |a preparar |a llevar )?(?:un|una|unos|unas|el|la|los|las|mi|[0-9]+) )"
    r"|(?:corro|corremos|vengo|venimos|caigo|caemos|caere|llego|llegamos|llegare|colaboro|colaboramos|contribuyo|contribuimos|participo|coopero|cooperamos|ayudo|me presento|aparezco|me apunto|nos apuntamos|me anoto|nos anotamos|me sumo|nos sumamos|me prendo|le entro|le entramos|le caigo|les caigo|me animo|voy|vamos|ire|iremos|puedo|podemos|me pongo|nos ponemos|me quedo|nos quedamos|me tiro|jalo|jalamos|cargo|cargamos|arrimo|cumplo|coopero|apoyo|apoyamos)(?: (?:yo|nosotros|tambien|ahi))* con(?= )"
    r"|(?:quedo|quedamos|estoy|me quedo|nos quedamos|voy|corro) a cargo (?:de|del)(?= )|(?:me|nos) (?:apunto|apuntamos|anoto|anotamos|comprometo|comprometemos)(?: (?:yo|tambien))* (?:al|a (?:la|los|las))(?= )(?! (?:fiesta|cena|comida|reunion|asado|convite|convivio|barbacoa|parrillada|juntada|lista|evento|cafe|plan|viaje|gimnasio|gym|curso|cine|partido|futbol|padel|paseo|carrera|clase|excursion|caminata|viaje|que|las? [0-9]))"
    r"|(?:me|nos) (?:apunto|apuntamos|anoto|anotamos)(?: (?:yo|tambien))* (?:para (?:llevar|traer|hacer|poner)?|a (?:llevar|traer|hacer|poner)|el|la|los|las)(?= )"
    r"|(?:apunt|anot|pon|ponga|inscrib|agend|registr)(?:ame|enme|adme|arme|dme|edme|nme|me|anos|ennos|adnos|dnos|anme)(?: (?:a mi|por favor|ahi|tambien|ademas))*(?: (?:para|con|en|lo de))?(?= )"
    r"|(?:cuent[ae]n?|contad|conta) con (?:mi|mis|nuestr[oa]s?|un|una|el|la|los|las|unos|unas)(?= )|(?:cuent[ae]n?|contad|conta) conmigo (?:para|con) (?=(?:el|la|los|las|un|una|unos|unas) )(?!(?:el|la|los|las|un|una) (?:fiesta|cena|comida|reunion|asado|sabado|domingo|dia|evento|convivio|barbacoa|parrillada|juntada|celebracion|noche|tarde|viernes|jueves|proxim))|(?:cuent[ae]n?|contad|conta) con (?=[0-9]+ [a-z]+ de |media |medio )"
    r"|(?:de|por) (?:mi|nuestra) (?:parte|lado|cuenta)(?: ,)?(?: (?:van|va|ira|iran|pongo|llevo|ponemos|llevamos))?(?= )|(?:de|por) (?:mi|nuestra) casa (?:va|van)(?= )|va[n]? por (?:mi|nuestra) cuenta(?= )"
    r"|(?:lo (?:mio|nuestro)|mi (?:aporte|plato|contribucion|parte|turno)|nuestro (?:aporte|plato)) (?:es|sera|seria|son|seran|va a ser|:|,)(?= )"
    r"|dej(?:ame|adme|enme) (?:a mi )?(?:(?:lo de|el tema de|llevar|traer|poner|hacer) )?(?=(?:el|la|los|las|un|una) ))"
)
AFTER = re.compile(
    rf" (?:,? ?(?:(?:ya )?(?:lo|la|los|las) (?:{ME})(?: yo| nosotros)?|(?:lo|la|los|las) (?:voy a|vamos a|puedo|podemos|quiero) (?:{_INF})(?: yo)?|me encargo(?: yo)?|nos encargamos|me ocupo(?: yo)?|nos ocupamos|(?:corre|corren|va|van) (?:por|de) (?:(?:mi|nuestra) (?:cuenta|parte)|mi|nosotros)|(?:de|por) (?:mi|nuestra) (?:parte|cuenta)|cuenta mia|es mi[oa]|son mi[oa]s|me toca(?: a mi)?|de los mios|dej(?:en|a|ad|e)(?:me|nos)(?:lo|la|los|las) (?:a mi|a nosotros|a nosotras)|(?:{ME}) (?:yo|nosotros|nosotras)(?= $| ,)|,? ?(?:anot|apunt|pon)(?:ame|enme|adme|eme|edme)(?: a mi| ahi| porfa)*(?= $)|,? ?me (?:anoto|apunto|ofrezco|encargo yo))|,? (?:yo|nosotros)(?: ?$| ,))(?=[ ,]|$)"
)
"""What makes an offer of the things before it: "el postre lo pongo yo", "vasos de mi cuenta"."""
ELIDED = re.compile(
    r"^ (?:(?:si|pues|bueno|ok|vale|dale|entonces|va|venga|y|,) )*(?:yo|nosotros|nosotras)(?: tambien)?(?: con)? ,? ?(?=(?:el|la|los|las|un|una|unos|unas|[0-9]+|lo que|algo|mi) )"
)
"""What offers without a verb: "yo el postre"."""
IF_NONE = re.compile(
    rf" si (?:nadie (?:mas )?|no (?:hay|llevan|traen|tienen)(?: quien)? ?)(?:trae|lleva|pone|hace|lleve|traiga|ponga|haga|)(?P<what> .+?) ,? ?(?:entonces |yo |pues |nosotros )*(?:(?:lo|la|los|las) )?(?:{ME}|paso por|puedo (?:{_INF})(?:lo|la|los|las)?|me encargo|voy por|busco)(?P<much> .*)$"
)
"""On the condition that nobody else does."""
LATER = re.compile(
    r" (?:si (?:nadie|no (?:lo |la |los |las )?(?:trae|lleva|hay|alcanza|llega|falta)|hace falta|falta|quieren|les|queda|me da tiempo|puedo|consigo|encuentro)|quiza|quizas|tal vez|a lo mejor|puede que|capaz que|igual (?:llevo|hago)|no se si|depende) "
)
ELSE = re.compile(
    r"^ (?:(?:el|la|los|las) )?(?:[0-9]+|un|una|media|muchas?|varias?|toda la|todo el|como|unas|unos|ya|mas de|casi)(?: [0-9]+)? (?:horas?|dias?|minutos?|min|semanas?|mes|meses|años?|anos?|rato|vida|mañana|tiempo|noches?|tardes?|vueltas?|kilometros|km)(?= )"
    r"|^ (?:nada|falta|la cuenta|la razon|bien|mal|mejor|meses|prisa|cuidado|gracia|puest[oa]|a (?:cabo|casa)|tarde|tiempo|ilusion|ganas|hambre|sueño|frio|calor|razon|de acuerdo|el pelo|el coche|el carro|el auto|la moto|deporte|ejercicio|yoga|dieta|cola|fila|el ridiculo|caso|la siesta|la compra|los deberes|la tarea|la maleta|la lavadora|la colada|la alarma|la tele|una lavadora|un favor|el favor|los lentes|las gafas|la pierna|ropa|uniforme|paraguas|al perro|nervios[oa]|content[oa]|trist[ea]|maquillaje|tacones|la contraria|las riendas|atencion|al dia|en cuenta|en mente|a [a-z]+ a|constar|saber|notar|falta|ver)(?= )"
)
