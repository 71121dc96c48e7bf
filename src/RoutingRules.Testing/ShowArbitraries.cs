using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>FsCheck arbitraries of shows over the rigs of <see cref="RigArbitraries"/>.</summary>
/// <remarks>Built by construction; profiles are written into the rig, so that no source of profiles is needed.</remarks>
public static class ShowArbitraries
{
    /// <summary>
    /// Shows with feeds, lines and a patch of <see cref="PatchArbitraries.Valid"/> that need not deliver them. Every name resolves, also in smaller ones.
    /// </summary>
    public static Arbitrary<Show> Valid() => Arb.From(Dice.Throw(static dice => ShowMaker.Valid(dice, false)), ShowShrinker.Valid);

    /// <summary>Shows to be assigned: as <see cref="Valid"/>, half of them without a patch.</summary>
    public static Arbitrary<Show> ToAssign() => Arb.From(Dice.Throw(static dice => ShowMaker.Valid(dice, true)), ShowShrinker.Valid);

    /// <summary>Shows with cables laid wrong and a patch of <see cref="PatchArbitraries.Messy"/>: conflicts, loops, dead ends, names of nothing.</summary>
    public static Arbitrary<Show> Messy() => Arb.From(Dice.Throw(ShowMaker.Messy), ShowShrinker.Messy);

    /// <summary>Shows in which every feed and line is delivered, labelled and powered, and nothing else sounds anywhere.</summary>
    public static Arbitrary<CleanShow> Clean() => Arb.From(Dice.Throw(CleanShow.Make), static clean => clean.Smaller());
}
