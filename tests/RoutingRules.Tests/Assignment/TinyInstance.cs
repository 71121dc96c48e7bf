using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>A show small enough to try everything on it.</summary>
public sealed record TinyInstance
{
    public required int Seed { get; init; }

    public required Show Show { get; init; }

    public required AssignmentOptions Options { get; init; }

    public override string ToString() => $"seed {Seed}";
}
