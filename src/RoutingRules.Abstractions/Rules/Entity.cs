using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <summary>A thing that a finding is about, with the part it plays in the finding.</summary>
/// <remarks>Identity of findings is built from these, never from positions or texts; see <see cref="Finding.Fingerprint"/>.</remarks>
public sealed record Entity
{
    /// <summary>The part it plays: <c>output</c>, <c>feed</c>, <c>device</c> and so on.</summary>
    public required string Role { get; init; }

    /// <summary>Its id or address.</summary>
    public required string Id { get; init; }

    /// <summary>An entity.</summary>
    public static Entity Of(string role, string id) => new() { Role = role, Id = id };

    /// <summary>A point, or a run of points.</summary>
    public static Entity Of(string role, PointRange at) => new() { Role = role, Id = at.ToString() };

    /// <summary>A point.</summary>
    public static Entity Of(string role, Point at) => new() { Role = role, Id = at.ToString() };

    /// <summary>A named entity.</summary>
    public static Entity Of<T>(string role, Id<T> id) => new() { Role = role, Id = id.Value };
}
