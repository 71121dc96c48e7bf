using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>Makes tiny shows by construction, the same one for the same seed.</summary>
/// <remarks>
/// One or two consoles, one to three boxes (fixed, clearable or free; ragged; with dead and reserved points), sometimes a recorder, an amplifier
/// or a transmitter rack, up to four demands with pins, pairs, sets, groups, preferred numbers, priorities, holds and separations, and a patch that
/// already does some of it. Sizes are such that trying everything takes well under a second.
/// </remarks>
public static class TinyInstances
{
    /// <summary>How many sets of placements an instance may have, roughly.</summary>
    private const int MostPlacements = 3000;

    /// <summary>Instances for properties; a failing one names its seed.</summary>
    public static Arbitrary<TinyInstance> Arbitrary { get; } = Gen.Choose(0, int.MaxValue - 1).Select(Make).ToArbitrary();

    /// <summary>The instance of a seed.</summary>
    public static TinyInstance Make(int seed)
    {
        var dice = new TinyDice(seed);
        var rig = new TinyRig(dice);
        var (feeds, lines) = TinyDemands.Make(dice, rig, MostPlacements);
        return new TinyInstance
        {
            Seed = seed,
            Show = new Show
            {
                Title = $"Tiny {seed}",
                Rig = rig.Rig,
                Feeds = feeds,
                Lines = lines,
                Patch = TinyPatch.Make(dice, rig, feeds),
            },
            Options = Options(dice, rig),
        };
    }

    private static AssignmentOptions Options(TinyDice dice, TinyRig rig)
    {
        ObjectiveLevel[] levels = [.. Enum.GetValues<ObjectiveLevel>()];
        if (dice.In(8))
            dice.Shuffle(levels);

        var without =
            dice.In(12) ? dice.Pick(rig.Boxes).Id.Value
            : dice.In(6) ? $"{dice.Pick(rig.Boxes).Id}/out/1"
            : dice.In(4) && rig.Rig.Links.Count > 0 ? dice.Pick(rig.Rig.Links).Id.Value
            : null;
        return new AssignmentOptions
        {
            Spares = dice.In(15) ? 1 : 0,
            Headroom = dice.In(8) ? 1 : 0,
            KeepUnlisted = dice.In(20),
            Without = without is null ? [] : [without],
            Order = levels.SequenceEqual(Enum.GetValues<ObjectiveLevel>()) ? [] : [.. levels],
        };
    }
}
