using System.Globalization;
using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Result;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Answers why demands are where they are: by assigning, judging every other place, and assigning again with one thing changed.</summary>
internal sealed class WhyBuilder
{
    private readonly ShowAssigner assigner;
    private readonly ResolvedShow show;
    private readonly AssignmentOptions options;
    private readonly CancellationToken cancellation;

    private WhyBuilder(ShowAssigner assigner, Show show, AssignmentOptions options, CancellationToken cancellation)
    {
        this.assigner = assigner.WithoutRules();
        this.show = assigner.Resolve(show);
        this.options = options with { ExplainUnplaced = false };
        this.cancellation = cancellation;
    }

    /// <summary>Answers a question.</summary>
    /// <exception cref="ArgumentException">The question cannot be answered; the message says what to ask instead.</exception>
    public static WhyAnswer Answer(ShowAssigner assigner, Show show, WhyQuestion question, AssignmentOptions options, CancellationToken cancellation) =>
        new WhyBuilder(assigner, show, options, cancellation).Answer(question);

    private WhyAnswer Answer(WhyQuestion question)
    {
        var subject = new WhySubject(show, question);
        var result = Assign(show.Document, options);
        var asked = subject.Demands.Select(node => node.Key).ToHashSet(StringComparer.Ordinal);
        result = UnplacedExplainer.Explain(assigner, show.Document, options, result, asked.Contains, cancellation);
        cancellation.ThrowIfCancellationRequested();
        var probe = new AlternativeProbe(show, options, result, this.assigner.Resolve(result.Show));
        return new WhyAnswer
        {
            Subject = question.Subject,
            Status = result.Status,
            Objective = result.Objective,
            Decisions = subject.Demands.Select(node => Decide(node, result, probe)).ToValueList(),
            WhatIf = subject.Point is { } point ? Suppose(subject.Which(result), point, question.At is not null, result) : null,
            Utilisation = result.Utilisation,
            Links = result.Links,
        };
    }

    private AssignmentResult Assign(Show some, AssignmentOptions with)
    {
        var result = SecondLook.At(assigner, some, with, assigner.Assign(some, with, cancellation), cancellation);
        cancellation.ThrowIfCancellationRequested();
        return result;
    }

    private WhyDecision Decide(DemandNode node, AssignmentResult result, AlternativeProbe probe)
    {
        var place = result.Placements.FirstOrDefault(placement => placement.Demand == node.Key);
        var refusals = new RefusalList(probe, options);
        var others = node.IsPinned ? [] : refusals.Of(node);
        return new WhyDecision
        {
            Demand = node.Key,
            At = place?.At,
            Basis =
                place is null ? DecisionBasis.Unplaced
                : place.IsPinned ? DecisionBasis.Pinned
                : !place.IsKept ? DecisionBasis.Chosen
                : node.IsHeld ? DecisionBasis.Held
                : DecisionBasis.Kept,
            Grounds = place is null ? [] : WhyGrounds.Of(show, node, place.At, result),
            Refusals = others,
            RunnerUp = place is null || node.IsPinned || result.Objective is null ? null : Second(node, place.At, result, refusals.Best),
            Unplaced = result.Unplaced.Where(entry => entry.Demand == node.Key).ToValueList(),
        };
    }

    /// <summary>The better of assigning all again without the place, and of moving this demand alone: a search that ended early may miss the second.</summary>
    private RunnerUp? Second(DemandNode node, PointRange at, AssignmentResult result, (int First, ObjectiveVector? Objective) alone)
    {
        var place = new Placement { Demand = node.Key, At = at };
        var second = Assign(show.Document, options with { Avoid = options.Avoid.Append(place).ToValueList() });
        var isAlone = alone.Objective is not null && (second.Objective is null || alone.Objective.CompareTo(second.Objective, options.Order) < 0);
        if ((isAlone ? alone.Objective : second.Objective) is not { } objective)
        {
            return null;
        }

        return new RunnerUp
        {
            At = isAlone ? show.Graph.Address(new PointIndex(alone.First), node.Width) : PlaceOf(second, node.Key),
            Objective = objective,
            IsProven = !isAlone && second.Status == AssignmentStatus.Optimal,
            Difference = ObjectiveDifference.Between(result.Objective!, objective, options.Order),
            Moves = isAlone ? [] : Moves(result, second, node.Key),
        };
    }

    private WhatIf Suppose(DemandNode node, PointRange point, bool isWanted, AssignmentResult result)
    {
        var now = PlaceOf(result, node.Key);
        var wanted = isWanted ? ShowChanges.Pin(result.Show, node, point) : result.Show;
        var pinned = isWanted ? assigner.Resolve(wanted).Demands[node.Index].Allowed : [];
        if (isWanted && pinned.IsEmpty)
        {
            throw new ArgumentException($"{point} can never be the place of {node.Key}: {WhySubject.Nature(node)}; name another point.");
        }

        var target = isWanted ? show.Graph.Address(pinned[0], node.Width) : point;
        if (isWanted == (now == target))
        {
            return new WhatIf
            {
                Demand = node.Key,
                Point = point,
                IsWanted = isWanted,
                IsSoAlready = true,
                At = now,
            };
        }

        var (then, isProven) = Follow(node, point, isWanted, wanted, result);
        var holds = result.Placements.Select(place => AssignmentReport.HoldNote(place.Demand, place.At)).ToHashSet(StringComparer.Ordinal);
        var held = show.Demands.Where(other => other.IsHeld).Select(other => other.Key).ToHashSet(StringComparer.Ordinal);
        var moves = Moves(result, then, node.Key)
            .Concat(Gained(result, then, node.Key))
            .Select(move => move with { IsHeld = held.Contains(move.Demand) })
            .ToValueList();
        return new WhatIf
        {
            Demand = node.Key,
            Point = point,
            IsWanted = isWanted,
            At = PlaceOf(then, node.Key),
            IsProven = isProven,
            Moves = moves,
            Lost = Lost(result, then, node.Key),
            Contradiction = then.Contradictions.FirstOrDefault(set => set.Contains(node.Key)),
            Remarks = then
                .Notes.Where(note => !result.Notes.Contains(note) && !holds.Contains(note))
                .Concat(then.Unplaced.Where(entry => entry.Demand == node.Key && entry.Sink is null).Select(entry => entry.Reason))
                .ToValueList(),
        };
    }

    /// <summary>
    /// The assignment that follows: the one where all others stay, if it leaves nobody out; else the best in which they may go, held ones of the document
    /// only where no assignment can keep them. What the first assignment has only just placed is held by nobody.
    /// </summary>
    private (AssignmentResult Then, bool IsProven) Follow(DemandNode node, PointRange point, bool isWanted, Show wanted, AssignmentResult result)
    {
        var first = isWanted ? ShowChanges.Pin(show.Document, node, point) : show.Document;
        if (!isWanted && node.IsPinned)
        {
            // What else the demand might take is not written anywhere; its own device is what stands to reason.
            wanted =
                ShowChanges.Unpin(wanted, node)
                ?? throw new ArgumentException($"{node.Key} is born at {point} and can enter nowhere else; change its origin in the document.");
            first = ShowChanges.Unpin(first, node)!;
        }

        var with = isWanted ? options : options with { Avoid = options.Avoid.Append(new Placement { Demand = node.Key, At = point }).ToValueList() };
        var then = Assign(ShowChanges.HoldAll(wanted), with);
        var isProven = then.Status == AssignmentStatus.Optimal;
        if (PlaceOf(then, node.Key) is not null && Lost(result, then, node.Key).Count == 0)
        {
            return (then, isProven);
        }

        var free = Assign(ShowChanges.HoldOnly(wanted, show), with);
        isProven = free.Status == AssignmentStatus.Optimal;
        if (Weigh(then, free, ObjectiveNumbers.Tiers + 1) < 0)
        {
            isProven = false;
            free = then;
        }

        var anew = Assign(first, with);
        return Weigh(anew, free, ObjectiveNumbers.Tiers) < 0 ? (anew, anew.Status == AssignmentStatus.Optimal) : (free, isProven);
    }

    /// <summary>
    /// Compares what is left without a place by priority, then how many move, held or not, as far as so many numbers; contradicting pins come last.
    /// </summary>
    private static int Weigh(AssignmentResult one, AssignmentResult other, int numbers)
    {
        if (one.Objective is not { } first || other.Objective is not { } second)
        {
            return (one.Objective is null).CompareTo(other.Objective is null);
        }

        for (var number = 0; number < numbers; number++)
        {
            var (here, there) = number < ObjectiveNumbers.Tiers ? (first.Values[number], second.Values[number]) : (Moved(first), Moved(second));
            if (here != there)
            {
                return here.CompareTo(there);
            }
        }

        return 0;

        static int Moved(ObjectiveVector vector) => vector.Values[ObjectiveNumbers.Moved(true)] + vector.Values[ObjectiveNumbers.Moved(false)];
    }

    private static PointRange? PlaceOf(AssignmentResult result, string demand) => result.Placements.FirstOrDefault(place => place.Demand == demand)?.At;

    private static ValueList<MovedDemand> Moves(AssignmentResult before, AssignmentResult after, string except)
    {
        var then = after.Placements.ToDictionary(place => place.Demand, place => place.At, StringComparer.Ordinal);
        return before
            .Placements.Where(place => place.Demand != except && then.TryGetValue(place.Demand, out var at) && at != place.At)
            .Select(place => new MovedDemand
            {
                Demand = place.Demand,
                From = place.At,
                To = then[place.Demand],
            })
            .ToValueList();
    }

    /// <summary>Others that had no place and would have one.</summary>
    private static IEnumerable<MovedDemand> Gained(AssignmentResult before, AssignmentResult after, string except)
    {
        var had = before.Placements.Select(place => place.Demand).ToHashSet(StringComparer.Ordinal);
        return after
            .Placements.Where(place => place.Demand != except && !had.Contains(place.Demand))
            .Select(place => new MovedDemand
            {
                Demand = place.Demand,
                From = null,
                To = place.At,
            });
    }

    private static ValueList<string> Lost(AssignmentResult before, AssignmentResult after, string except) =>
        after
            .Unplaced.Where(entry =>
                (entry.Demand != except || entry.Sink is not null) && !before.Unplaced.Any(known => known.Demand == entry.Demand && known.Sink == entry.Sink)
            )
            .Select(entry => entry.Sink is { } sink ? string.Create(CultureInfo.InvariantCulture, $"{entry.Demand} at {sink}") : entry.Demand)
            .ToValueList();
}
