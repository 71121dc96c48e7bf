using System.Globalization;
using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Strategies;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Says why a demand was left out, by asking of each of its points what stands against it.</summary>
internal sealed class UnplacedReasons
{
    private const long WiringBudget = 500;

    /// <summary>Free places that are tried with links that hold everything.</summary>
    private const int MostTried = 8;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly PinsAndHolds firm;
    private readonly int[] choices;
    private readonly int[] active;
    private readonly ResolvedShow result;
    private Evaluator? withoutLinkRoom;

    public UnplacedReasons(AssignmentProblem problem, Evaluator evaluator, PinsAndHolds firm, int[] choices, ResolvedShow result)
    {
        this.result = result;
        this.problem = problem;
        this.evaluator = evaluator;
        this.firm = firm;
        this.choices = choices;
        active = [.. Enumerable.Range(0, problem.Demands.Length)];
    }

    /// <summary>Why a whole demand has no place.</summary>
    public string Of(Demand demand)
    {
        if (firm.Contradictions.Find(set => set.Contains(demand.Index)) is { } contradiction)
        {
            return contradiction.Count == 1 && demand.Late.Length > 0
                    ? $"It would arrive where it is pinned later than {Most(demand)}; pin it elsewhere, take a slow device out of the path, or allow more."
                : contradiction.Count == 1
                    ? "Its pin breaks a rule on its own: the devices and links have no stream, block or limit left that could reach the point; "
                        + "pin it elsewhere."
                : $"Its pin contradicts other pins ({string.Join(", ", contradiction.Select(index => problem.Demands[index].Node.Key))}); release one of them.";
        }

        if (demand.Node.Feed is { } feed && feed.Source.IsNone)
        {
            return $"Its source {feed.Model.Source} does not exist; correct the source.";
        }

        if (demand.Node.Allowed.Count == 0)
        {
            return NothingAllowed(problem.Show.Graph, demand.Node);
        }

        if (problem.IsCut)
        {
            return "The work was stopped before it was looked at; assign again.";
        }

        if (problem.Untried.Count > 0 && demand.Late.Length == 0 && Barred(demand) < demand.Node.Allowed.Count)
        {
            return $"No place was found with the blocks inside {string.Join(", ", problem.Untried.Select(device => device.Id))} routed as they are now "
                + "or from the same numbers, and other blocks were not tried; route the block it needs and assign again.";
        }

        return demand.Candidates.Length == 0 ? NothingUsable(demand) : Contested(demand);
    }

    /// <summary>Why one sink of a placed line is not reached.</summary>
    public static string Of(Demand demand, int entry)
    {
        var line = demand.Node.Line!;
        if (demand.Late.Contains(line.Sinks[entry].Value))
        {
            return $"It would arrive at {line.Model.To[entry]} later than it may; take a slow device out of the path, or allow more.";
        }

        if (line.Sinks[entry].IsNone)
        {
            return $"{line.Model.To[entry]} does not exist or is not as wide as the line; correct it.";
        }

        var reaches = demand.Candidates.Any(candidate => candidate.Deliveries.Any(delivery => delivery.Sink == line.Sinks[entry].Value));
        return reaches
            ? $"{line.Model.To[entry]} could be reached, but another demand takes it or the stream it would need exceeds a limit of the devices."
            : $"No route, stream or cable can bring the line to {line.Model.To[entry]}; check the routing of the profiles and the network links.";
    }

    private static string NothingAllowed(SignalGraph graph, DemandNode node)
    {
        if (node.Line is not null)
        {
            return node.IsPinned
                ? "None of the inputs it names exists as an input of the line's width; correct `from`."
                : "No free input of the devices or zones it names suits its kind and phantom need; name others or change the kind.";
        }

        var to = node.Feed!.Model.To[node.Entry];
        return to.At is { } at ? NothingAt(graph, node, at) : "None of the devices or zones it names has a line output that it could take; name others.";
    }

    /// <summary>Why a pin leads to no place: it is not there, it is too wide or narrow, or what is before it has no end that a patch could feed.</summary>
    private static string NothingAt(SignalGraph graph, DemandNode node, PointRange at)
    {
        if (graph.Find(at, out var first) != ConnectionState.Connected)
        {
            return $"{at} does not exist; correct it.";
        }

        if (at.Width != node.Width)
        {
            return $"{at} is not as wide as the source; correct it.";
        }

        var start = first;
        foreach (var point in graph.Upward(first))
        {
            start = point;
        }

        return start == first
            ? $"{at} is no place that a patch can feed, or an input without a cable; correct it or add the cable."
            : $"{at} gets its signal through {graph.Address(start)}, to which nothing leads that a patch can feed; add the cable, or pin the feed before it.";
    }

    /// <summary>The limit that what is late keeps to, of several the greatest.</summary>
    private string Most(Demand demand) =>
        string.Create(CultureInfo.InvariantCulture, $"{demand.Late.Max(run => PathLatency.Most(problem.Options, problem.Show, demand.Node, run)):0.###} ms");

    private string NothingUsable(Demand demand)
    {
        if (demand.Late.Length > 0)
        {
            return $"It would arrive later than {Most(demand)} wherever it may go; "
                + "allow other devices or zones, take a slow device out of the path, or allow more.";
        }

        if (Exposure.IsPrivate(demand.Node) && demand.Node.Allowed.All(run => problem.Exposure.Leads(run.Value)))
        {
            var points = demand.Node.Allowed.Count == 1 ? "the point" : $"the {demand.Node.Allowed.Count} points";
            return $"Loudspeakers play whatever is at {points} it may take, "
                + $"and {demand.Node.Feed!.Model.Role} is kept away from them; allow other devices or zones, or pin it with `at` where it shall be heard.";
        }

        var barred = Barred(demand);
        return barred == demand.Node.Allowed.Count
            ? $"{(barred == 1 ? "Its only place is" : $"All of its {Places(barred, demand.Node.Width)} are")} dead, reserved or excluded; free one."
            : "No route, stream or cable can bring the signal to any point it may take; check the routing of the profiles and the network links.";
    }

    private int Barred(Demand demand) => demand.Node.Allowed.Count(run => problem.IsBarred[run.Value] || problem.IsBarred[run.Value + demand.Node.Width - 1]);

    private string Contested(Demand demand)
    {
        var takers = new SortedSet<int>();
        var free = 0;
        var isKept = false;
        var before = choices[demand.Index];
        foreach (var candidate in demand.Candidates)
        {
            var claimant = evaluator.ClaimantOf(active, choices, candidate, demand.Index);
            if (claimant >= 0)
            {
                takers.Add(claimant);
            }
            else if (problem.Given.Owners(demand, candidate.First).ToList() is { Count: > 0 } owners)
            {
                takers.UnionWith(owners.Select(owner => owner.Index));
                isKept = true;
            }
            else
            {
                free++;
            }
        }

        choices[demand.Index] = before;
        var count = demand.Candidates.Select(candidate => candidate.First).Distinct().Count();
        var points = Places(count, demand.Node.Width);
        if (free == 0)
        {
            return $"It may take {points}, and {(count == 1 ? "it is" : "all are")} {(isKept ? "taken by or kept for" : "taken by")} {Names(takers)}; "
                + "free one, or allow other devices or zones.";
        }

        if (FullLink(demand) is { } full)
        {
            return $"It may take {points}, but {LinkWords.Full(full)}; use a faster link, let fewer streams pass it, or allow other devices or zones.";
        }

        return SpareWanted(demand) is { } spare
            ? $"It could take {spare}, but that has to stay free as a spare; ask for fewer spares, or allow other devices or zones."
            : $"It may take {points}, but {(free == 1 ? "the one" : "those")} left would break a limit on streams, blocks or separation, "
                + "or would need a block that other outputs must have silent; free a block, raise a limit, or allow other devices or zones.";
    }

    /// <summary>The link that keeps a demand from a free place; null when none does.</summary>
    private LinkUse? FullLink(Demand demand)
    {
        if (problem.Links.Count == 0)
        {
            return null;
        }

        var tried = 0;
        var before = choices[demand.Index];
        LinkUse? full = null;
        for (var choice = 0; choice < demand.Candidates.Length && full is null && tried < MostTried; choice++)
        {
            if (!IsFree(demand, demand.Candidates[choice]))
            {
                continue;
            }

            tried++;
            choices[demand.Index] = choice;
            withoutLinkRoom ??= new Evaluator(problem.WithoutLinkRoom());
            if (
                evaluator.Evaluate(active, choices, null, WiringBudget, null, out _) is null
                && withoutLinkRoom.Evaluate(active, choices, null, WiringBudget, null, out _) is not null
            )
            {
                full = LinkTable.FullOn(problem, result, demand.Candidates[choice]) is [var first, ..] ? first : null;
            }
        }

        choices[demand.Index] = before;
        return full;
    }

    private bool IsFree(Demand demand, Candidate candidate) =>
        evaluator.ClaimantOf(active, choices, candidate, demand.Index) < 0 && !problem.Given.Owners(demand, candidate.First).Any();

    private Point? SpareWanted(Demand demand)
    {
        if (problem.Options.Spares == 0)
        {
            return null;
        }

        foreach (var candidate in demand.Candidates)
        {
            var used = 0;
            foreach (var index in active)
            {
                if (
                    choices[index] >= 0
                    && problem.Demands[index].Node.Line is null
                    && problem.Demands[index].Candidates[choices[index]].PortGroup == candidate.PortGroup
                )
                {
                    used += problem.Demands[index].Candidates[choices[index]].Claims.Count(point => problem.IsSpare[point]);
                }
            }

            if (
                candidate.AsksForSpares
                && IsFree(demand, candidate)
                && problem.UsableOutputs[candidate.PortGroup] - used - demand.Node.Width < problem.Options.Spares
            )
            {
                return problem.Show.Graph.Address(new PointIndex(candidate.First));
            }
        }

        return null;
    }

    private string Names(SortedSet<int> demands)
    {
        const int most = 8;
        var names = demands.Take(most).Select(index => problem.Demands[index].Node.Key);
        return string.Join(", ", names) + (demands.Count > most ? string.Create(CultureInfo.InvariantCulture, $" and {demands.Count - most} more") : "");
    }

    private static string Places(int count, int width)
    {
        var what = (count, width) switch
        {
            (1, 1) => "point",
            (1, _) => "pair of points",
            (_, 1) => "points",
            _ => "pairs of points",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{count} {what}");
    }
}
