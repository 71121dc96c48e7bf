using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>The show that a fix is looked for in.</summary>
public sealed class FixContext
{
    private static readonly RuleDescriptor Everything = new()
    {
        Id = "fixing",
        Name = "fixing",
        Title = "Fixing",
        Family = RuleFamily.Document,
        Severity = Severity.Note,
        Checks = "",
        Why = "",
        Remedy = "",
        Source = "",
    };

    private RuleContext? facts;

    /// <summary>A context.</summary>
    /// <param name="show">The show as it stands, resolved.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public FixContext(ResolvedShow show)
    {
        ArgumentNullException.ThrowIfNull(show);
        Resolved = show;
    }

    /// <summary>The show with its signal graph.</summary>
    public ResolvedShow Resolved { get; }

    /// <summary>The document.</summary>
    public Show Show => Resolved.Document;

    /// <summary>What rules ask; without a budget and without anybody to report to.</summary>
    internal RuleContext Facts => facts ??= new RuleContext(Resolved, Everything, Severity.Note, default, new WorkMeter(), []);
}
