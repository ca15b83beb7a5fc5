"""Median loss of each room at equal assumptions: ours and the peer's, on the channels that ours chose. They agree within 1 dB, or
within what medians of so few draws may differ by, where that is more."""
import numpy as np

import houses
import ours
import truth
import wiring

MOST = 1.0  # dB
OURS = 200  # draws of our forecast
DRAWS = 1200


def check(command, priors, count, seed, draws=DRAWS):
    faults, differences = [], []
    print(f"Loss at equal assumptions, dB: ours and the peer's median, {draws} draws here")
    for number in range(count):
        house = houses.house(seed, number, plain=True)
        said = ours.forecast(command, house)
        dice = np.random.default_rng([seed, number, 1])
        off = wiring.Wiring(house, priors, dice, 2, truth.frequencies(50.0)).differs_from_circuit()
        if off > 1e-9:
            faults.append(f"{house.name}: scikit-rf's Circuit differs from its connect_s by {off:.1e}")
        rates = truth.worked_out(house, priors, dice, draws)
        rates.places = [sorted(channel["centre_mhz"] for channel in said["channels"])]
        print(f"  {house.name}: {', '.join(sorted(house.classes))}")
        for room, part in enumerate(house.adapters()[1:], 1):
            our = said["by_tag"][part.tag]["loss_db"]
            # Equal assumptions: the error that ours allows for its own model, too.
            here = rates.loss(room, 0) + priors.draw(dice, "model-error", draws)
            low, median, high = np.percentile(here, [10, 50, 90])
            # What two medians of one distribution differ by, of as many draws as ours and as these: three standard deviations.
            many = np.median(np.random.default_rng(0).choice(here, (400, OURS)), axis=1)
            open_by = 3 * many.std() * np.sqrt(1 + OURS / draws)
            differences.append(our["likely"] - median)
            bad = abs(differences[-1]) > max(MOST, open_by)
            print(f"    {part.tag}: {our['low']:5.1f} {our['likely']:5.1f} {our['high']:5.1f}   {low:5.1f} {median:5.1f} {high:5.1f}   {differences[-1]:+.2f} ({open_by:.2f}){' <-' if bad else ''}")
            if bad:
                faults.append(f"{house.name} {part.tag}: median loss {our['likely']} and {median:.1f} dB")
    print(f"  {len(differences)} rooms, mean difference {np.mean(differences):+.2f} dB, greatest {np.abs(differences).max():.2f}, {np.mean(np.abs(differences) <= MOST):.0%} within {MOST} dB")
    return faults
