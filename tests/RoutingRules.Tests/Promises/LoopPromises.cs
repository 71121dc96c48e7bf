using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tracing;

namespace RoutingRules.Tests.Promises;

/// <summary>Devices cabled in a ring end no question in a circle: every answer comes, and no rule gives up for its budget.</summary>
public sealed class LoopPromises
{
    private const int Cases = 25;

    /// <summary>Units of work for one rule on one subject: far more than shows of this size need.</summary>
    private const long Budget = 200_000;

    /// <summary>Never reached unless something runs in a circle; the work itself takes a fraction of a second.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    [Property(MaxTest = 150)]
    public Property Rules_on_rings_come_to_an_end() =>
        Promise.Of(
            Ringed(),
            show =>
            {
                var active = BuiltInRules.All.Select(rule => new ActiveRule(rule, rule.Descriptor.Severity, default)).ToArray();
                return
                    RuleRunner
                        .Run(Promise.Resolve(show), active, Budget, CancellationToken.None)
                        .Undecided.FirstOrDefault(subject => subject.IsFault || subject.Reason.Contains("budget", StringComparison.Ordinal))
                        is { } bad
                    ? $"{bad.Rule} on {bad.Subject}: {bad.Reason}"
                    : null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property Assigning_rings_comes_to_an_end() =>
        Promise.Of(
            Ringed(),
            show =>
                InTime(() =>
                {
                    foreach (
                        var options in (AssignmentOptions[])
                            [AssignCases.Small, AssignCases.Small with { KeepUnlisted = true, LatencyMilliseconds = 4, ExplainUnplaced = true }]
                    )
                    {
                        var result = AssignCases.Assign(show, options);
                        if (AssignCases.Verdict(show, result, options) is { } wrong)
                            return wrong;
                    }

                    if (AssignCases.Keys(show).LastOrDefault() is { } asked)
                        Promise.Engine.Why(show, new WhyQuestion { Subject = asked }, AssignCases.Small);

                    return null;
                })
        );

    [Property(MaxTest = Cases)]
    public Property Losses_on_rings_come_to_an_end() =>
        Promise.Of(
            Ringed(),
            show =>
                InTime(() =>
                {
                    Promise.Engine.Impact(show, new ImpactOptions { SetSize = 1, Kinds = [.. Enum.GetValues<LossKind>()] });
                    return null;
                })
        );

    [Property(MaxTest = Cases)]
    public Property Changes_fixes_traces_and_sheets_of_rings_come_to_an_end() =>
        Promise.Of(
            Ringed(),
            show =>
                InTime(() =>
                {
                    var assigned = AssignCases.Assign(show, AssignCases.Small).Show;
                    var resolved = Promise.Resolve(assigned);
                    Promise.Engine.Compare(show, assigned);
                    Promise.Engine.PlanChangeover(show, assigned);
                    Promise.Engine.Fix(show);
                    SheetBuilder.Build(resolved);
                    for (var point = 0; point < resolved.Graph.PointCount; point++)
                        Tracer.Trace(resolved, new PointIndex(point));

                    return null;
                })
        );

    private static Arbitrary<Show> Ringed() =>
        Arb.From(from show in ShowArbitraries.ToAssign().Generator from seed in Gen.Choose(0, 1_000_000) select Rings.Close(show, seed));

    // A thread that runs in a circle cannot be stopped; it must not keep the run of the tests alive.
    private static string? InTime(Func<string?> work)
    {
        var found = "";
        Exception? thrown = null;
        var thread = new Thread(() =>
        {
            try
            {
                found = work();
            }
#pragma warning disable CA1031 // Thrown again where it can be seen.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                thrown = fault;
            }
        })
        {
            IsBackground = true,
        };
        thread.Start();
        return !thread.Join(Patience) ? "It does not come to an end."
            : thrown is null ? found
            : throw new InvalidOperationException("It failed.", thrown);
    }
}
