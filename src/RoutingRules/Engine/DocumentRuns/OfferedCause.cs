using RoutingRules.Diagnosis;
using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>A cause with what its repair does to the text of the document.</summary>
public sealed record OfferedCause
{
    /// <summary>Its number, from 1, by which <c>fix --cause</c> takes it.</summary>
    public required int Number { get; init; }

    /// <summary>The cause.</summary>
    public required Cause Cause { get; init; }

    /// <summary>The repair.</summary>
    public required OfferedFix Repair { get; init; }

    /// <summary>Repairs that would do as well, in the order of <see cref="Cause.Alternatives"/>.</summary>
    public ValueList<OfferedFix> Alternatives { get; init; }
}
