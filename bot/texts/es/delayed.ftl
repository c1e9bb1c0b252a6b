# La comida se retrasa el mismo día.
delay-head = <b>Ahora comemos a las { $when }.</b> Lo que está fuera o caliente no espera solo <i>({ $source })</i>:
delay-ends-before = { $over ->
    [yes] ✋ { $dish }: su tiempo fuera se acabó a las { $end }. A la basura.
   *[no] ✋ { $dish }: su tiempo fuera se acaba a las { $end }, antes de comer. Al refrigerador o sobre hielo ya (/out para su reloj; los minutos que van quedan contados), o se come antes.
}
delay-keep-hot = • Hasta entonces a { at-140 } o más, tapado, en horno bajo u olla lenta en «warm»: { $dishes }. Lo que no se pueda mantener así se enfría y se recalienta bien.
delay-keep-cold = • En el refrigerador o sobre hielo hasta el último momento: { $dishes }.
