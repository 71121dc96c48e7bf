using FsCheck;
using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>FsCheck generators of patches for a rig whose profiles are all written into it.</summary>
public static class PatchArbitraries
{
    /// <summary>
    /// Valid patches: routes that the profiles allow, streams of whole blocks on network <c>audio</c> received on the grid, within limits, each sink
    /// claimed once, no loop. Nothing says that the signals make sense.
    /// </summary>
    /// <param name="rig">The rig.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rig"/> is null.</exception>
    public static Gen<Patch> Valid(Rig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return Dice.Throw(dice => new PatchMaker(dice, new RigView(rig)).Make());
    }

    /// <summary>
    /// Patches with mistakes: overlaps, blocks off their grid, routes no profile allows, unequal widths, names that do not exist, several claims
    /// on a sink, loops.
    /// </summary>
    /// <param name="rig">The rig.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rig"/> is null.</exception>
    public static Gen<Patch> Messy(Rig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return Dice.Throw(dice => new MessyPatchMaker(dice, new RigView(rig)).Make());
    }
}
