using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>What mending a show came to.</summary>
public sealed record FixResult
{
    /// <summary>The show with all fixes that were taken.</summary>
    public required Show Show { get; init; }

    /// <summary>What the rules said before.</summary>
    public required CheckResult Before { get; init; }

    /// <summary>What they say now: the findings that remain.</summary>
    public required CheckResult After { get; init; }

    /// <summary>The fixes that were taken, in the order they were.</summary>
    public ValueList<AppliedFix> Applied { get; init; }

    /// <summary>The fixes that were tried on the last state of the show and not taken, in the order they were tried.</summary>
    public ValueList<RefusedFix> Refused { get; init; }

    /// <summary>The ids of rules whose fixes undo one another, in ordinal order; the run stopped where the circle begins. Usually empty.</summary>
    public ValueList<string> Circle { get; init; }

    /// <summary>True when the run stopped because <see cref="FixOptions.MaxTrials"/> was reached.</summary>
    public bool IsStopped { get; init; }

    /// <summary>The edits of all fixes that were taken, one after the other.</summary>
    public ValueList<ShowEdit> Edits => Applied.SelectMany(applied => applied.Fix.Edits).ToValueList();
}
