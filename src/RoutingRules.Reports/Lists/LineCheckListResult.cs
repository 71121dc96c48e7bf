using RoutingRules.Model;
using RoutingRules.Planning.LineChecks;

namespace RoutingRules.Reports.Lists;

/// <summary>What a list says that a line check found.</summary>
public sealed record LineCheckListResult
{
    /// <summary>What was found, in the order of the list; empty when there are problems.</summary>
    public required ValueList<LineCheckResult> Results { get; init; }

    /// <summary>The line of the list on which each result stands, from 1.</summary>
    public required ValueList<int> Lines { get; init; }

    /// <summary>Rows without a result.</summary>
    public required int Unchecked { get; init; }

    /// <summary>What is wrong, by line; empty when the list was read.</summary>
    public required ValueList<ListProblem> Problems { get; init; }
}
