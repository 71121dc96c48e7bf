using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports runs of feeds or lines that arrive, all together, a number of points beside their places.</summary>
/// <remarks>
/// One finding for each run: three points or more of two feeds or lines or more. Rules about single feeds, lines and outputs leave the members out.
/// </remarks>
public sealed class RunDisplaced : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2011",
            Name = "run-displaced",
            Title = "Whole run patched a few places off",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks = "Feeds and lines that name neighbouring points do not all arrive the same number of points beside them.",
            Why = "One slip at the start of a run puts every mix of it on the wrong connector: everybody hears their neighbour's mix.",
            Remedy =
                "Mute the outputs, then shift the route, the stream or the loom back by the number the finding names; check one output at low "
                + "level before the others.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(context.Demands.Count);
        foreach (var run in Displacements.OfFeeds(context).Runs)
        {
            Report(context, run, "feed", $"/feeds/{run.Demands[0].Feed?.Index}/to/{run.Demands[0].Entry}");
        }

        foreach (var run in Displacements.OfLines(context).Runs)
        {
            Report(context, run, "line", $"/lines/{run.Demands[0].Line?.Index}/to");
        }
    }

    private static void Report(RuleContext context, DisplacedRun run, string role, string pointer)
    {
        var wanted = context.Address(run.Wanted, run.Width);
        var actual = context.Address(run.Wanted + run.Shift, run.Width);
        var places = Math.Abs(run.Shift);
        var shift = string.Create(CultureInfo.InvariantCulture, $"{places} {(places == 1 ? "place" : "places")} too {(run.Shift > 0 ? "high" : "low")}");
        var names = run.Demands.ConvertAll(demand => $"'{demand.DisplayName}'");
        var entities = new List<Entity> { Entity.Of("wanted", wanted), Entity.Of("actual", actual) };
        entities.AddRange(run.Demands.ConvertAll(demand => Entity.Of(role, demand.Feed?.Model.Id.Value ?? demand.Line!.Model.Id.Value)));
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"What belongs at {wanted} arrives at {actual}, {shift}: {run.Demands.Count} {role}s, {Wording.List(names)}."
            ),
            pointer,
            [.. entities]
        );
    }
}
