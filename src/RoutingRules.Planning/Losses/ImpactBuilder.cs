using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Losses;

/// <summary>Works out what each loss does to a show.</summary>
internal sealed class ImpactBuilder
{
    /// <summary>Pairs that are listed at most.</summary>
    private const int MaxPairs = 200;

    private readonly ResolvedShow show;
    private readonly FailureModel model;
    private readonly LossUnits units;

    private ImpactBuilder(ResolvedShow show, ImpactOptions options)
    {
        this.show = show;
        model = new FailureModel(show);
        units = new LossUnits(model, options.Kinds);
    }

    /// <summary>Answers.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public static ImpactAnswer Answer(ShowAssigner assigner, Show show, ImpactOptions options, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(options.Moves, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.SetSize, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(options.SetSize, 3, nameof(options));
        var builder = new ImpactBuilder(assigner.Resolve(show), options);
        var planner = options.Recovery ? new FallbackPlanner(assigner, builder.model, options, cancellation) : null;
        var losses = LossRanking.Of(builder.Singles(cancellation));
        var pairs = LossRanking.Of(options.Pairs ? builder.Pairs(cancellation) : []);
        return new ImpactAnswer
        {
            Losses = builder.Planned(losses, planner, cancellation),
            Pairs = builder.Planned(pairs.Take(MaxPairs), planner, cancellation),
            PairsOmitted = Math.Max(0, pairs.Count - MaxPairs),
            FailureSets = options.SetSize == 0 ? [] : builder.Sets(options.SetSize, cancellation),
            NotArriving = builder.model.NotArriving.ToValueList(),
            Moves = options.Moves,
        };
    }

    /// <summary>The single losses alone, with the work it took.</summary>
    internal static (List<LossImpact> Losses, long Work) Measure(ResolvedShow show, ImpactOptions options)
    {
        var builder = new ImpactBuilder(show, options);
        var losses = builder.Singles(CancellationToken.None);
        return (losses.ConvertAll(loss => loss.Impact), builder.model.Work);
    }

    private ValueList<LossImpact> Planned(IEnumerable<FoundLoss> losses, FallbackPlanner? planner, CancellationToken cancellation)
    {
        var planned = new List<LossImpact>();
        foreach (var loss in losses)
        {
            planned.Add(planner is null ? loss.Impact : loss.Impact with { Plan = planner.Plan(units.SetOf(loss.Units), loss.Silenced) });

            // An assignment that is stopped ends early instead of throwing; what it found so far is no answer.
            cancellation.ThrowIfCancellationRequested();
        }

        return planned.ToValueList();
    }

    private List<FoundLoss> Singles(CancellationToken cancellation)
    {
        var losses = new List<FoundLoss>();
        for (var unit = 0; unit < units.All.Count; unit++)
        {
            cancellation.ThrowIfCancellationRequested();
            losses.Add(Describe([unit]));
        }

        return losses;
    }

    /// <summary>Pairs that silence together what neither does alone.</summary>
    private List<FoundLoss> Pairs(CancellationToken cancellation)
    {
        var search = new CutSearch(model, units);
        var pairs = new SortedSet<(int One, int Other)>();
        foreach (var subject in model.Subjects)
        {
            cancellation.ThrowIfCancellationRequested();
            Collect(search.Find(Living(subject), 2));
            foreach (var delivery in subject.Deliveries)
            {
                Collect(search.Find([delivery], 2));
            }
        }

        return [.. pairs.Select(pair => Describe([pair.One, pair.Other]))];

        void Collect(List<int[]> sets)
        {
            foreach (var set in sets)
            {
                if (set.Length == 2)
                {
                    pairs.Add((set[0], set[1]));
                }
            }
        }
    }

    private ValueList<FailureSets> Sets(int size, CancellationToken cancellation)
    {
        var search = new CutSearch(model, units);
        var found = new List<FailureSets>();
        foreach (var subject in model.Subjects)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!subject.IsProtected || subject.Deliveries.Count == 0)
            {
                continue;
            }

            var sets = search.Find(Living(subject), size);
            found.Add(
                new FailureSets
                {
                    Feed = subject.Id,
                    Name = subject.Name,
                    Role = subject.Feed!.Model.Role,
                    Priority = subject.Priority,
                    Sets = sets.Take(FailureSets.MostSets).Select(set => set.Select(unit => units.All[unit].Thing).ToValueList()).ToValueList(),
                    Omitted = Math.Max(0, sets.Count - FailureSets.MostSets),
                    Limit = size,
                }
            );
        }

        return found.ToValueList();
    }

    /// <summary>The places of a feed and of all that back it up.</summary>
    private List<int> Living(LossSubject subject) => [.. BackupsOf(subject).Prepend(subject).SelectMany(one => one.Deliveries)];

    private List<LossSubject> BackupsOf(LossSubject subject)
    {
        var found = new List<LossSubject>();
        var seen = new HashSet<int> { subject.Index };
        var open = new Queue<LossSubject>([subject]);
        while (open.TryDequeue(out var next))
        {
            foreach (var backup in next.Backups)
            {
                if (seen.Add(backup))
                {
                    found.Add(model.Subjects[backup]);
                    open.Enqueue(model.Subjects[backup]);
                }
            }
        }

        return found;
    }

    private FoundLoss Describe(int[] which)
    {
        var lost = units.SetOf(which);
        var rerouted = new List<NetworkPath>();
        var silenced = model.Silenced(lost, rerouted);
        var harmed = new HashSet<int>();
        foreach (var point in silenced)
        {
            harmed.UnionWith(model.DeliveriesAt.GetValueOrDefault(point) ?? []);
        }

        var subjects = new List<(LossSubject Subject, LostSubject Account)>();
        foreach (
            var subject in harmed
                .Select(SubjectOf)
                .Distinct()
                .OrderBy(index => model.Subjects[index].Rank)
                .ThenBy(index => index)
                .Select(index => model.Subjects[index])
        )
        {
            subjects.Add((subject, Account(subject, harmed)));
        }

        return new FoundLoss
        {
            Units = which,
            Silenced = harmed,
            Impact = new LossImpact
            {
                Lost = which.Select(unit => units.All[unit].Thing).ToValueList(),
                Subjects = subjects.Select(pair => pair.Account).ToValueList(),
                Silences = Groups(subjects.Where(pair => pair.Account.Fate == LossFate.Lost).Select(pair => pair.Subject).ToHashSet()),
                Outputs = PointRuns.Of(show.Graph, silenced.Where(point => KindOf(point) == PortKind.Output)),
                Channels = PointRuns.Of(show.Graph, silenced.Where(point => KindOf(point) == PortKind.Sink)),
                Rerouted = rerouted.SelectMany(way => way.Streams).Distinct().Order().Select(stream => show.Streams[stream].Model.Id.Value).ToValueList(),
                FeedsKept =
                    model.Subjects.Count(subject => subject.Feed is not null && subject.Deliveries.Count > 0)
                    - subjects.Count(pair => pair.Subject.Feed is not null),
                LinesKept =
                    model.Subjects.Count(subject => subject.Line is not null && subject.Deliveries.Count > 0)
                    - subjects.Count(pair => pair.Subject.Line is not null),
                Remarks = LossRemarks.Of(show, units, which, lost, rerouted),
            },
        };
    }

    private int SubjectOf(int delivery) =>
        model.Deliveries[delivery].Demand is var demand && demand.Feed is { } feed ? feed.Index : show.Feeds.Count + demand.Line!.Index;

    private PortKind KindOf(int point) => show.Graph.GroupOf(new PointIndex(point)).Kind;

    private LostSubject Account(LossSubject subject, HashSet<int> harmed)
    {
        var backups = BackupsOf(subject).Where(backup => backup.Deliveries.Exists(delivery => !harmed.Contains(delivery))).ToList();
        var remains = subject.Deliveries.Where(delivery => !harmed.Contains(delivery)).ToList();
        return new LostSubject
        {
            Subject = subject.Id,
            Name = subject.Name,
            Role = subject.Feed?.Model.Role,
            IsInEar = subject.IsInEar,
            Priority = subject.Priority,
            Person = subject.Feed?.Model.Person,
            Fate =
                remains.Count > 0 ? LossFate.Partly
                : backups.Count > 0 ? LossFate.BackedUp
                : LossFate.Lost,
            LostAt = subject.Deliveries.Where(harmed.Contains).Select(delivery => model.Deliveries[delivery].At).ToValueList(),
            RemainsAt = remains.Select(delivery => model.Deliveries[delivery].At).ToValueList(),
            Backups = backups.Select(backup => backup.Id).ToValueList(),
        };
    }

    /// <summary>
    /// The groups of two feeds or more that arrive and are all lost: sets by first appearance, then mains where they are no set, then in-ear feeds.
    /// </summary>
    private ValueList<string> Groups(HashSet<LossSubject> lost)
    {
        var groups = new List<(string Title, List<LossSubject> Feeds)>();
        var arriving = model.Subjects.Where(subject => subject.Feed is not null && subject.Deliveries.Count > 0).ToList();
        foreach (var set in arriving.Where(subject => subject.Feed!.Model.Set is not null).GroupBy(subject => subject.Feed!.Model.Set!, StringComparer.Ordinal))
        {
            groups.Add(($"set '{set.Key}'", [.. set]));
        }

        foreach (
            var (feeds, title) in new[]
            {
                (arriving.FindAll(subject => subject.IsMain), "all mains"),
                (arriving.FindAll(subject => subject.IsInEar), "all in-ear feeds"),
            }
        )
        {
            if (!groups.Exists(group => group.Feeds.Count == feeds.Count && group.Feeds.TrueForAll(feeds.Contains)))
            {
                groups.Add((title, feeds));
            }
        }

        return groups.Where(group => group.Feeds.Count > 1 && group.Feeds.TrueForAll(lost.Contains)).Select(group => group.Title).ToValueList();
    }
}
