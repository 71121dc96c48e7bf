using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports dead and reserved points that the show uses.</summary>
/// <remarks>
/// One finding for each entry of the lists of dead and reserved points. A label alone counts when another point has the same text: else it may well say that
/// the point is dead.
/// </remarks>
public sealed class PointUnusable : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2013",
            Name = "point-unusable",
            Title = "Dead or reserved point in use",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "No feed, line, route or label uses a point that is written down as dead or reserved, and no cable is in a dead one; an error for "
                + "a main or in-ear feed on a dead one.",
            Why = "What somebody wrote down yesterday is found again in the middle of the show; a reserved point is wanted by a guest who counts on it.",
            Remedy = "Move the feed, the line or the cable to a free point, or take the entry off the list if the point was mended or is no longer reserved.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Marks.Count == 0)
        {
            return;
        }

        var uses = new Dictionary<int, List<string>>();
        var grave = new HashSet<int>();
        var intentions = Intentions.Of(context);
        AddDemands(context, intentions, uses, grave);
        AddRoutes(context, intentions, uses);
        AddLabels(context, intentions, uses);
        AddCables(context, intentions, uses);
        var once = new HashSet<(PointIndex First, int Width, bool IsDead)>();
        foreach (var mark in context.Marks)
        {
            context.LookedAt();
            if (once.Add((mark.First, mark.Width, mark.IsDead)))
            {
                Report(context, mark, uses, grave);
            }
        }
    }

    private static void AddDemands(RuleContext context, Intentions intentions, Dictionary<int, List<string>> uses, HashSet<int> grave)
    {
        foreach (var demand in context.Demands)
        {
            var isGrave = demand.Feed is { } feed && (feed.Model.Role == FeedRole.Main || feed.Model.Role == FeedRole.InEar);
            var existing = demand.Existing;
            foreach (var run in demand.IsPinned ? demand.Allowed.AsSpan() : new ReadOnlySpan<PointIndex>(in existing))
            {
                for (var position = 0; !run.IsNone && position < demand.Width; position++)
                {
                    if (!intentions.IsMarked(run + position))
                    {
                        continue;
                    }

                    Add(uses, run + position, $"{(demand.Feed is null ? "line" : "feed")} '{demand.DisplayName}'");
                    if (isGrave)
                    {
                        grave.Add(run.Value + position);
                    }
                }
            }
        }
    }

    private static void AddRoutes(RuleContext context, Intentions intentions, Dictionary<int, List<string>> uses)
    {
        foreach (var route in context.Routes)
        {
            for (var position = 0; !route.From.IsNone && position < route.Model.To.Width; position++)
            {
                if (!intentions.IsMarked(route.To + position) && !intentions.IsMarked(route.From + position))
                {
                    continue;
                }

                var isReal = context.ViaIndex(route.To + position) == route.Index && !context.Origin(route.From + position).IsNone;
                if (isReal && intentions.IsMarked(route.To + position))
                {
                    Add(uses, route.To + position, $"the route to {context.Address(route.To + position)}");
                }

                if (isReal && intentions.IsMarked(route.From + position))
                {
                    Add(uses, route.From + position, $"the route from {context.Address(route.From + position)}");
                }
            }
        }
    }

    private static void AddLabels(RuleContext context, Intentions intentions, Dictionary<int, List<string>> uses)
    {
        foreach (var label in context.Labels)
        {
            if (context.Find(label.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            for (var position = 0; position < label.At.Width; position++)
            {
                if (intentions.IsMarked(first + position) && IsRepeated(context, label))
                {
                    Add(uses, first + position, $"label '{label.Text}'");
                }
            }
        }
    }

    /// <summary>A cable in a reserved point may be the guest's own; one in a dead point leads to silence.</summary>
    private static void AddCables(RuleContext context, Intentions intentions, Dictionary<int, List<string>> uses)
    {
        foreach (var cable in context.Cables)
        {
            for (var position = 0; cable.State == ConnectionState.Connected && position < cable.Model.From.Width; position++)
            {
                if (intentions.IsDead(cable.From + position))
                {
                    Add(uses, cable.From + position, $"the cable to {cable.Model.To}");
                }

                if (intentions.IsDead(cable.To + position))
                {
                    Add(uses, cable.To + position, $"the cable from {cable.Model.From}");
                }
            }
        }
    }

    private static bool IsRepeated(RuleContext context, PointLabel label)
    {
        var count = 0;
        foreach (var other in context.Labels)
        {
            count += string.Equals(other.Text, label.Text, StringComparison.Ordinal) ? 1 : 0;
        }

        return count > 1;
    }

    private static void Add(Dictionary<int, List<string>> uses, PointIndex point, string by)
    {
        if (!uses.TryGetValue(point.Value, out var list))
        {
            uses.Add(point.Value, list = []);
        }

        list.Add(by);
    }

    private static void Report(RuleContext context, MarkedPoint mark, Dictionary<int, List<string>> uses, HashSet<int> grave)
    {
        var users = new List<string>();
        var isGrave = false;
        for (var position = 0; position < mark.Width; position++)
        {
            // A feed or line stands first; the route and the label that serve it need no words of their own.
            if (uses.TryGetValue(mark.First.Value + position, out var list) && !users.Contains(list[0]))
            {
                users.Add(list[0]);
            }

            isGrave |= mark.IsDead && grave.Contains(mark.First.Value + position);
        }

        if (users.Count == 0)
        {
            return;
        }

        var at = context.Address(mark.First, mark.Width);
        var what = mark.IsDead ? Wording.Verb(at, "does not work", "do not work") : Wording.Verb(at, "is reserved", "are reserved");
        context.ReportAs(
            isGrave ? Severity.Error : Severity.Warning,
            $"{at} {what}{(mark.Reason is { } reason ? $" ({reason})" : "")}, but {Wording.Verb(at, "is", "are")} used by {Wording.List(users)}.",
            string.Create(CultureInfo.InvariantCulture, $"/rig/{(mark.IsDead ? "unavailable" : "reserved")}/{mark.Index}"),
            Entity.Of(mark.IsDead ? "dead" : "reserved", at)
        );
    }
}
