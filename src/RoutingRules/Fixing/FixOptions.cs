using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>Which fixes are wanted.</summary>
public sealed record FixOptions
{
    /// <summary>Whether unsafe fixes are taken as well.</summary>
    public bool IncludeUnsafe { get; init; }

    /// <summary>The ids or names of the rules whose findings are mended; empty for all.</summary>
    public ValueList<string> Rules { get; init; }

    /// <summary>Tells which findings somebody has decided to live with: they stay, unless <see cref="Rules"/> names their rule. Null for none.</summary>
    public Func<Finding, bool>? IsAccepted { get; init; }

    /// <summary>How many proposals may be tried, 1 or more; each is one check of the show.</summary>
    public int MaxTrials { get; init; } = 10_000;
}
