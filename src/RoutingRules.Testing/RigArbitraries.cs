using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>FsCheck arbitraries of valid rigs.</summary>
/// <remarks>
/// Built by construction, with every profile written into the rig. One or two consoles <c>desk-1</c>, <c>desk-2</c>, up to four boxes <c>box-1</c> …,
/// and now and then a recorder, a digital multicore, processors, amplifiers, racks, splits and selectors. Network <c>audio</c> has no links, or
/// they form a chain, a ring or a tree. Cables close no loop. They shrink to fewer devices, links, cables and points and stay valid.
/// </remarks>
public static class RigArbitraries
{
    /// <summary>Rigs.</summary>
    public static Arbitrary<Rig> Rigs() => Arb.From(Dice.Throw(dice => new RigMaker(dice).Make()), ShowShrinker.Rigs);
}
