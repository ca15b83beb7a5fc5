# forecast

# A reading beside the forecast
beside-expected = { $close ->
    [about] about as expected
   *[inside] as expected
}
beside-within = { $way ->
    [up] From the room { $measured }: { beside-expected }, { $expected }.
   *[down] To the room { $measured }: { beside-expected }, { $expected }.
}
beside-below = { $way ->
    [up] From the room { $measured }: below what was expected, { $expected }.
   *[down] To the room { $measured }: below what was expected, { $expected }.
}
beside-at-socket = { $way ->
    [up] From the room { $measured }: as much as the test’s network socket ({ $socket }) lets pass. It says nothing against the cable.
   *[down] To the room { $measured }: as much as the test’s network socket ({ $socket }) lets pass. It says nothing against the cable.
}
beside-near-socket = { $way ->
    [up] From the room { $measured }: about what a network socket of { $socket } lets pass, such as most computers have. Nobody said which one the test had, so it says nothing against the cable.
   *[down] To the room { $measured }: about what a network socket of { $socket } lets pass, such as most computers have. Nobody said which one the test had, so it says nothing against the cable.
}
beside-near-hundred = { $way ->
    [up] From the room { $measured }: { $expected } was expected. That looks like a network socket or network cable of { $socket } somewhere, so look there before the coax.
   *[down] To the room { $measured }: { $expected } was expected. That looks like a network socket or network cable of { $socket } somewhere, so look there before the coax.
}
beside-above = { $way ->
    [up] From the room { $measured }: more than was expected, { $expected }.
   *[down] To the room { $measured }: more than was expected, { $expected }.
}
beside-phy-within = PHY rate (raw speed on the coax) { $measured }: { beside-expected }, { $expected }.
beside-phy-below = PHY rate (raw speed on the coax) { $measured }: below what was expected, { $expected }.
beside-phy-above = PHY rate (raw speed on the coax) { $measured }: more than was expected, { $expected }.
beside-loss-within = Lost on the way: { $measured }, { beside-expected }: { $expected }.
beside-loss-below = Lost on the way: { $measured }, less than was expected, { $expected }.
beside-loss-above = Lost on the way: { $measured }, more than was expected, { $expected }.
beside-plan = { $reading }: at your plan’s rate, so the plan limits it. Only a test within the house tells what the cable carries beyond that.
beside-radio = { $reading }: partly by radio, so it says nothing of the cable.
beside-earlier = { $reading }: measured before work was done on this way, so it says nothing of the wiring as it is. Test once more.
beside-internet = { $reading }: to the internet, which may be slower for other reasons.{ $plan ->
    [known] {" "}The plan gives { $rate }.
   *[none] { "" }
} A test within the house tells more.
beside-reading = { $reading }.
