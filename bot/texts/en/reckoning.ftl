help-reckon = how sure each answer is, like “/reckon yes 95 maybe 40 none 10”, “/reckon level 85” or “/reckon hearty”
reckon-level = Amounts are for { $people } people, so that they suffice in { $level } of 100 such evenings ({ $expected } expected){ $hearty ->
    [yes] , for a hearty crowd
   *[no] {""}
}.
refused-odds = Give figures from 0 to 100, like “/reckon yes 95 maybe 40 none 10”, or say “/reckon hearty”, “/reckon usual” or “/reckon default”.
refused-service-level = Give a level from 50 to 99, like “/reckon level 85”.
did-reckon = what is reckoned with
