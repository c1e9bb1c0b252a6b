help-reckon = cuánto vale cada respuesta, por ejemplo «/reckon yes 95 maybe 40 none 10», «/reckon level 85» o «/reckon hearty»
reckon-level = Las cantidades son para { $people } personas, para que alcancen en { $level } de cada 100 tardes así (se esperan { $expected }){ $hearty ->
    [yes] , con mucha hambre
   *[no] {""}
}.
refused-odds = Da cifras de 0 a 100, por ejemplo «/reckon yes 95 maybe 40 none 10», o di «/reckon hearty» (mucha hambre), «/reckon usual» o «/reckon default».
refused-service-level = Da un nivel de 50 a 99, por ejemplo «/reckon level 85».
did-reckon = con qué se calcula
