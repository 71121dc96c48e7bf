using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Comparing;

/// <summary>Compares two shows.</summary>
internal sealed class ShowComparer
{
    private readonly Dictionary<string, string> feedNames;
    private readonly Dictionary<string, string> lineNames;

    private readonly Dictionary<string, string> deviceNames;

    private ShowComparer(ShowSide before, ShowSide after, Dictionary<string, string> deviceNames)
    {
        Before = before;
        After = after;
        this.deviceNames = deviceNames;
        feedNames = Renames.OfFeeds(before.Show.Document, after.Show.Document);
        lineNames = Renames.OfLines(before.Show.Document, after.Show.Document);
    }

    public ShowSide Before { get; }

    public ShowSide After { get; }

    /// <summary>Makes a comparer; the first show gets the device ids of the second where devices were renamed.</summary>
    public static ShowComparer Of(Checker checker, Show before, Show after)
    {
        var names = Renames.OfDevices(before, after);
        return new ShowComparer(new ShowSide(checker.Resolve(new DeviceRenamer(names).Apply(before))), new ShowSide(checker.Resolve(after)), names);
    }

    /// <summary>What differs.</summary>
    public ShowComparison Compare(Checker checker, CancellationToken cancellation)
    {
        var old = checker.Check(Before.Show, cancellation);
        var now = checker.Check(After.Show, cancellation);
        var known = Fingerprints(old);
        var still = Fingerprints(now);
        return new ShowComparison
        {
            Sinks = Sinks(),
            Demands = Demands(),
            Entities = EntityComparer
                .Compare(Before.Show.Document, After.Show.Document, new(StringComparer.Ordinal) { ["feed"] = feedNames, ["line"] = lineNames })
                .Concat(deviceNames.Select(pair => Renamed(pair.Key, pair.Value)))
                .ToValueList(),
            Hazards = ChangeHazards.Find(this),
            NewFindings = now.Findings.Where(finding => !known.Contains(finding.Fingerprint())).ToValueList(),
            ResolvedFindings = old.Findings.Where(finding => !still.Contains(finding.Fingerprint())).ToValueList(),
            UnchangedFindings = now.Findings.Where(finding => known.Contains(finding.Fingerprint())).ToValueList(),
            Undecided = now.Undecided,
        };
    }

    /// <summary>True when two demands are the same feed's entry or line, renamed or not; true as well when both are none.</summary>
    public bool IsSame(DemandNode? before, DemandNode? after) =>
        before is null || after is null ? before is null && after is null : KeyOf(before, isBefore: true) == KeyOf(after, isBefore: false);

    /// <summary>The id of its feed or line in the second show, and the entry.</summary>
    public (bool IsFeed, string Id, int Entry) KeyOf(DemandNode demand, bool isBefore)
    {
        var id = IdOf(demand);
        return (demand.Feed is not null, isBefore ? (demand.Feed is not null ? feedNames : lineNames).GetValueOrDefault(id, id) : id, demand.Entry);
    }

    private static HashSet<string> Fingerprints(CheckResult check) => check.Findings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);

    private static EntityChange Renamed(string old, string now) =>
        new()
        {
            List = "/rig/devices",
            Kind = "device",
            Id = now,
            Was = old,
            Change = EntityChangeKind.Renamed,
        };

    private ValueList<SinkChange> Sinks()
    {
        var changes = new List<SinkChange>();
        foreach (var sink in After.Sinks())
        {
            var at = After.Graph.Address(sink);
            Add(changes, at, After.Graph.GroupOf(sink).Kind, Before.Graph.Find(at), sink);
        }

        foreach (var sink in Before.Sinks())
        {
            var at = Before.Graph.Address(sink);
            if (After.Graph.Find(at).IsNone)
            {
                Add(changes, at, Before.Graph.GroupOf(sink).Kind, sink, PointIndex.None);
            }
        }

        return changes
            .OrderBy(change =>
                change.IsInEar ? 0
                : change.Kind == PortKind.Sink ? 2
                : 1
            )
            .ToValueList();
    }

    private void Add(List<SinkChange> changes, Point at, PortKind kind, PointIndex before, PointIndex after)
    {
        var old = Before.Source(before);
        var now = After.Source(after);
        var oldLine = Before.LineBehind(before);
        var newLine = After.LineBehind(after);
        if (old == now && (old is null || IsSame(oldLine, newLine)))
        {
            return;
        }

        var change = new SinkChange
        {
            At = Runs.One(at),
            Kind = kind,
            Effect =
                before.IsNone ? SinkEffect.Appears
                : after.IsNone ? SinkEffect.Disappears
                : old is null ? SinkEffect.Starts
                : now is null ? SinkEffect.Stops
                : SinkEffect.Changes,
            Before = old is { } was ? Runs.One(was) : null,
            After = now is { } becomes ? Runs.One(becomes) : null,
            ServedBefore = Before.Served(before)?.DisplayName,
            ServesAfter = After.Served(after)?.DisplayName,
            LineBefore = oldLine?.DisplayName,
            LineAfter = newLine?.DisplayName,
            IsInEar = Before.LeadsToEars(before) || After.LeadsToEars(after),
        };
        if (changes.Count > 0 && Joined(changes[^1], change) is { } run)
        {
            changes[^1] = run;
        }
        else
        {
            changes.Add(change);
        }
    }

    /// <summary>One change for two neighbours that change alike; null when they do not.</summary>
    private static SinkChange? Joined(SinkChange run, SinkChange next)
    {
        if (Joined(run.At, next.At) is not { } at || run.Before is null != next.Before is null || run.After is null != next.After is null)
        {
            return null;
        }

        var before = run.Before is { } old ? Joined(old, next.Before!.Value) : null;
        var after = run.After is { } now ? Joined(now, next.After!.Value) : null;
        var isAlike =
            before is null == run.Before is null
            && after is null == run.After is null
            && run == next with { At = run.At, Before = run.Before, After = run.After };
        return isAlike ? run with { At = at, Before = before, After = after } : null;
    }

    private static PointRange? Joined(PointRange run, PointRange next) =>
        Runs.Follow(run[run.Width - 1], next[0]) ? new PointRange(run.Device, run.Group, run.First, next.Last) : null;

    private ValueList<DemandChange> Demands()
    {
        var changes = new List<DemandChange>();
        var old = Before.Show.Demands.ToLookup(demand => KeyOf(demand, isBefore: true));
        var seen = new HashSet<(bool, string, int)>();
        foreach (var demand in After.Show.Demands)
        {
            var key = KeyOf(demand, isBefore: false);
            seen.Add(key);
            var former = old[key].FirstOrDefault();
            var before = former is null ? null : Place(Before, former);
            var after = Place(After, demand);
            var was =
                former is null ? null
                : IdOf(former) is var id && id == key.Id ? null
                : id;
            DemandFate? fate =
                former is null ? DemandFate.Added
                : before is null && after is not null ? DemandFate.Placed
                : before is not null && after is null ? DemandFate.Lost
                : before != after ? DemandFate.Moved
                : was is not null ? DemandFate.Renamed
                : null;
            if (fate is { } some)
            {
                changes.Add(
                    new DemandChange
                    {
                        Demand = demand.Key,
                        Name = demand.DisplayName,
                        IsFeed = demand.Feed is not null,
                        Fate = some,
                        Was = was,
                        Before = before,
                        After = after,
                    }
                );
            }
        }

        foreach (var demand in Before.Show.Demands.Where(demand => !seen.Contains(KeyOf(demand, isBefore: true))))
        {
            changes.Add(
                new DemandChange
                {
                    Demand = demand.Key,
                    Name = demand.DisplayName,
                    IsFeed = demand.Feed is not null,
                    Fate = DemandFate.Removed,
                    Before = Place(Before, demand),
                }
            );
        }

        return changes.ToValueList();
    }

    private static string IdOf(DemandNode demand) => demand.Feed?.Model.Id.Value ?? demand.Line!.Model.Id.Value;

    private static PointRange? Place(ShowSide side, DemandNode demand) => demand.Existing.IsNone ? null : side.Graph.Address(demand.Existing, demand.Width);
}
