using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Answers;

/// <summary>Assigns a show again with something changed, a bounded number of times.</summary>
internal sealed class Reassigner(RoutingEngine engine, Show show, AssignmentOptions options, int runs, CancellationToken cancellation)
{
    private readonly RoutingEngine bare = engine.WithoutRules();
    private int left = runs;

    public Show Show { get; } = show;

    public AssignmentOptions Options { get; } = options with { ExplainUnplaced = false };

    public bool IsSpent => left <= 0;

    /// <summary>Allows more runs, unless more are left anyway.</summary>
    public void Allow(int most) => left = Math.Max(left, most);

    /// <summary>Assigns; null when no more runs are allowed or the work was stopped.</summary>
    public AssignmentResult? Assign(Show changed, AssignmentOptions wanted) =>
        left-- > 0 && !cancellation.IsCancellationRequested ? bare.Assign(changed, wanted, cancellation) : null;
}
