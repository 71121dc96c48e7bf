using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Assigns a show again with something changed, a bounded number of times.</summary>
/// <param name="assigner">Assigns.</param>
/// <param name="show">The show.</param>
/// <param name="options">How it was assigned.</param>
/// <param name="runs">How many times in all.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class Reassigner(ShowAssigner assigner, Show show, AssignmentOptions options, int runs, CancellationToken cancellation)
{
    private readonly ShowAssigner bare = assigner.WithoutRules();
    private int total = runs;
    private int left;

    public Show Show { get; } = show;

    public AssignmentOptions Options { get; } = options with { ExplainUnplaced = false };

    public bool IsSpent => left <= 0;

    /// <summary>Allows some runs, as far as the whole number goes; what is left of an earlier allowance is lost.</summary>
    public void Allow(int most) => left = Math.Min(most, total);

    /// <summary>Assigns; null when no more runs are allowed or the work was stopped.</summary>
    public AssignmentResult? Assign(Show changed, AssignmentOptions wanted)
    {
        if (left <= 0 || cancellation.IsCancellationRequested)
        {
            return null;
        }

        left--;
        total--;
        return bare.Assign(changed, wanted, cancellation);
    }
}
