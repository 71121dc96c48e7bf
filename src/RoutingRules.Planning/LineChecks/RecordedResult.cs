using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>One result of a line check as the show has it now.</summary>
public sealed record RecordedResult
{
    /// <summary>What was found.</summary>
    public required LineCheckResult Result { get; init; }

    /// <summary>The names of the feeds and lines that stood at the connectors, in the order of the demands.</summary>
    public required ValueList<string> Stood { get; init; }

    /// <summary>The same for <see cref="LineCheckResult.Other"/>.</summary>
    public ValueList<string> StoodAtOther { get; init; }

    /// <summary>What is cabled to connectors that do not work and has to be plugged elsewhere: the far ends, in the order of the document.</summary>
    public ValueList<PointRange> Cabled { get; init; }

    /// <summary>Where else it could be plugged: the first free connectors of the same group, beside each other; null when there are none.</summary>
    public PointRange? Free { get; init; }

    /// <summary>False when the show said so before.</summary>
    public required bool IsNew { get; init; }
}
