using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>A stage box of a starting show.</summary>
public sealed record StarterBox
{
    /// <summary>Its profile.</summary>
    public required Id<DeviceProfile> Profile { get; init; }

    /// <summary>
    /// Where it stands; null for the usual place: one box at the centre, two at the sides, a third at the centre, a fourth at the riser, and so on round.
    /// </summary>
    public StagePlace? Place { get; init; }
}
