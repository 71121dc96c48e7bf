using RoutingRules.Checking;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.LineChecks;

/// <summary>Writes into a show what a line check found, one result after the other.</summary>
internal static class LineCheckRecorder
{
    public static LineCheckRecord Record(Checker checker, Show show, IReadOnlyList<LineCheckResult> results, bool freesDead)
    {
        var before = checker.Resolve(show);
        var (map, problems) = (new PlugMap(), new List<LineCheckProblem>());
        for (var index = 0; index < results.Count; index++)
        {
            var result = results[index];
            if (
                (Wrong(before, result) ?? (IsPlug(result) ? map.Add(result.At, result.Other!.Value, result.Word == LineCheckWord.Swapped) : null)) is
                { } problem
            )
            {
                problems.Add(new LineCheckProblem { Index = index, Text = problem });
            }
        }

        foreach (var point in problems.Count == 0 ? map.Entered : [])
        {
            if (Taken(before, point) is { } taken)
            {
                var index = Index(results, result => result.Other is { } other && MarkWriter.Holds(other, point));
                problems.Add(
                    new LineCheckProblem { Index = index, Text = $"{point} is taken by {taken}; say that the two are swapped, or where that one was found." }
                );
            }
        }

        var rewriting = new ShowRewriting(show);
        if (problems.Count == 0 && !map.IsEmpty && PlugWriter.Write(rewriting, before, map) is { } torn)
        {
            problems.Add(new LineCheckProblem { Index = Index(results, IsPlug), Text = torn });
        }

        if (problems.Count > 0)
        {
            return new LineCheckRecord
            {
                Show = show,
                Edits = [],
                Results = [],
                Problems = problems.ToValueList(),
                AtDead = [],
                AreFreed = false,
                ToAssign = [],
            };
        }

        var recorded = results.Select(result => Marked(rewriting, before, result)).ToValueList();
        var after = checker.Resolve(rewriting.Show);
        var stuck = after.Demands.Where(demand => NamesDead(demand, results)).Select(demand => demand.Key).ToHashSet(StringComparer.Ordinal);
        if (freesDead && stuck.Count > 0)
        {
            var freed = UnpinEdits.Of(after, demand => stuck.Contains(demand.Key), checker.Resolve);
            rewriting.Take(freed.Edits);
            stuck = freed.Freed.Select(place => place.Demand).ToHashSet(StringComparer.Ordinal);
            after = checker.Resolve(rewriting.Show);
        }

        return new LineCheckRecord
        {
            Show = rewriting.Show,
            Edits = rewriting.Edits.ToValueList(),
            Results = recorded,
            Problems = [],
            AtDead = after.Demands.Where(demand => stuck.Contains(demand.Key)).Select(demand => demand.DisplayName).ToValueList(),
            AreFreed = freesDead,
            ToAssign = ToAssign(before, after),
        };
    }

    private static bool NamesDead(DemandNode demand, IReadOnlyList<LineCheckResult> results) =>
        Named(demand)
            .Any(run =>
                results.Any(result => result.Word == LineCheckWord.Dead && Enumerable.Range(0, run.Width).Any(i => MarkWriter.Holds(result.At, run[i])))
            );

    private static bool IsPlug(LineCheckResult result) => result.Word is LineCheckWord.Swapped or LineCheckWord.Moved;

    private static int Index(IReadOnlyList<LineCheckResult> results, Func<LineCheckResult, bool> holds) =>
        Enumerable.Range(0, results.Count).First(index => holds(results[index]));

    private static RecordedResult Marked(ShowRewriting rewriting, ResolvedShow before, LineCheckResult result)
    {
        var edits = rewriting.Edits.Count;
        switch (result.Word)
        {
            case LineCheckWord.Dead:
                MarkWriter.Kill(rewriting, result);
                break;
            case LineCheckWord.Reserved:
                MarkWriter.Reserve(rewriting, result);
                break;
            case LineCheckWord.Works:
                MarkWriter.Revive(rewriting, result);
                break;
        }

        var cabled = result.Word == LineCheckWord.Dead ? Cabled(rewriting.Show, result.At) : [];
        return new RecordedResult
        {
            Cabled = cabled,
            Free = cabled.IsEmpty ? null : Free(before, rewriting.Show, result.At),
            Result = result,
            Stood = Standing(before, result.At),
            StoodAtOther = result.Other is { } other ? Standing(before, other) : [],
            IsNew = IsPlug(result) || rewriting.Edits.Count > edits,
        };
    }

    private static string? Wrong(ResolvedShow show, LineCheckResult result)
    {
        if (Missing(show, result.At) is { } missing)
        {
            return missing;
        }

        if (!IsPlug(result))
        {
            return result.Other is null ? null : $"{result.At} has a second place beside it, which only swapped and moved plugs have; leave it away.";
        }

        if (result.Other is not { } other)
        {
            return result.Word == LineCheckWord.Swapped
                ? $"{result.At} is swapped, but with what is not said; write the other connector."
                : $"what belongs at {result.At} was moved, but where it is now is not said; write the connector at which it was found.";
        }

        if (Missing(show, other) is { } lost)
        {
            return lost;
        }

        var (one, two) = (KindOf(show, result.At), KindOf(show, other));
        if (one != two || one is not (PortKind.Input or PortKind.Output))
        {
            return $"{result.At} and {other} must be two inputs or two outputs; plugs are not elsewhere.";
        }

        if (result.At.Width != other.Width)
        {
            return $"{result.At} and {other} must be equally many connectors, and are {result.At.Width} and {other.Width}.";
        }

        return Enumerable.Range(0, other.Width).Any(i => MarkWriter.Holds(result.At, other[i]))
            ? $"{result.At} and {other} must not share a connector; name each once."
            : null;
    }

    /// <summary>The far ends of cables at a run, as far as they are plugged there.</summary>
    private static ValueList<PointRange> Cabled(Show show, PointRange run) =>
        show
            .Rig.Cables.SelectMany(cable => new[] { (Near: cable.From, Far: cable.To), (Near: cable.To, Far: cable.From) })
            .SelectMany(ends =>
                Enumerable
                    .Range(0, ends.Near.Width)
                    .Where(i => i < ends.Far.Width && MarkWriter.Holds(run, ends.Near[i]))
                    .Select(i => RunCuts.Part(ends.Far, i, 1))
            )
            .ToValueList();

    private static PointRange? Free(ResolvedShow before, Show show, PointRange run)
    {
        var group = before.Graph.GroupOf(before.Graph.Find(run[0]));
        for (var first = 1; first + run.Width - 1 <= group.Count; first += run.Width)
        {
            var place = new PointRange(run.Device, run.Group, first, first + run.Width - 1);
            var points = Enumerable.Range(0, run.Width).Select(i => place[i]).ToList();
            if (points.TrueForAll(point => Taken(before, point) is null && !IsMarked(show, point)))
            {
                return place;
            }
        }

        return null;
    }

    private static bool IsMarked(Show show, Point point) =>
        show.Rig.Unavailable.Any(entry => MarkWriter.Holds(entry.At, point)) || show.Rig.Reserved.Any(entry => MarkWriter.Holds(entry.At, point));

    private static string? Missing(ResolvedShow show, PointRange run) =>
        Enumerable.Range(0, run.Width).Any(i => show.Graph.Find(run[i]).IsNone)
            ? $"there is no {run} in the rig; the sheet of the device names its connectors."
            : null;

    private static PortKind KindOf(ResolvedShow show, PointRange run) => show.Graph.GroupOf(show.Graph.Find(run[0])).Kind;

    private static string? Taken(ResolvedShow show, Point point)
    {
        var run = new PointRange(point.Device, point.Group, point.Number, point.Number);
        var cable = show.Document.Rig.Cables.FirstOrDefault(cable => MarkWriter.Holds(cable.From, point) || MarkWriter.Holds(cable.To, point));
        return Standing(show, run) is [{ } name, ..] ? $"'{name}'"
            : cable is not null ? $"the cable from {cable.From} to {cable.To}"
            : null;
    }

    /// <summary>The names of the demands that stand, or are said to stand, at any connector of a run.</summary>
    private static ValueList<string> Standing(ResolvedShow show, PointRange run) =>
        show
            .Demands.Where(demand => Places(show, demand).Any(place => Enumerable.Range(0, place.Width).Any(i => MarkWriter.Holds(run, place[i]))))
            .Select(demand => demand.DisplayName)
            .ToValueList();

    private static IEnumerable<PointRange> Places(ResolvedShow show, DemandNode demand)
    {
        if (!demand.Existing.IsNone)
        {
            yield return show.Graph.Address(demand.Existing, demand.Width);
        }

        foreach (var at in Named(demand))
        {
            yield return at;
        }
    }

    private static IEnumerable<PointRange> Named(DemandNode demand) =>
        demand.Line is { } line ? line.Model.From.At
        : demand.Feed!.Model.To[demand.Entry].At is { } to ? [to]
        : [];

    private static ValueList<string> ToAssign(ResolvedShow before, ResolvedShow after) =>
        before
            .Demands.Where(demand => !demand.Existing.IsNone && !Stands(after, after.Demands.FirstOrDefault(now => now.Key == demand.Key)))
            .Select(demand => demand.DisplayName)
            .ToValueList();

    private static bool Stands(ResolvedShow show, DemandNode? demand) =>
        demand is { Existing.IsNone: false } && !Enumerable.Range(0, demand.Width).Any(i => show.MarkOf(demand.Existing + i) is { IsDead: true });
}
