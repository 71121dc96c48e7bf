using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>What follows when a demand must not have a place, or must have one. All else stays where it is as far as it can.</summary>
public sealed record WhatIf
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>The place that was asked about.</summary>
    public required PointRange Point { get; init; }

    /// <summary>True when it must have the place, false when it must not.</summary>
    public required bool IsWanted { get; init; }

    /// <summary>True when the answer changes nothing: it has the wanted place already, or does not have the unwanted one.</summary>
    public bool IsSoAlready { get; init; }

    /// <summary>Where the demand would be; null when nowhere.</summary>
    public required PointRange? At { get; init; }

    /// <summary>True when nothing better exists; false when the search ended early and fewer moves may do.</summary>
    public bool IsProven { get; init; }

    /// <summary>Which other demands move, in demand order; then those that have no place now and would have one.</summary>
    public ValueList<MovedDemand> Moves { get; init; }

    /// <summary>Demands that would lose their place, in demand order.</summary>
    public ValueList<string> Lost { get; init; }

    /// <summary>Pins that cannot hold together with the wanted place, it included, in demand order; empty when it is possible.</summary>
    public ValueList<string> Contradiction { get; init; }

    /// <summary>Remarks about it, such as a wanted point that is marked as not working, or why there is no place.</summary>
    public ValueList<string> Remarks { get; init; }
}
