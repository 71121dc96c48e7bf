using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>A feed or line that a list changes.</summary>
public sealed record ListChange
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The members that changed, in the order of the format.</summary>
    public required ValueList<string> Members { get; init; }
}
