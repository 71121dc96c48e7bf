using Google.OrTools.Sat;
using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>The numbers of the objective as sums, each made when it is asked for.</summary>
internal sealed class ObjectiveModel(AssignmentPart part, PlacementModel placements, WiringModel wiring)
{
    private const long MostOrderTerms = 3_000_000;

    private readonly CpModel model = placements.Model;
    private List<(int First, int Second, BoolVar Broken)>? pairs;

    /// <summary>One of the first six numbers, or a level.</summary>
    /// <returns>Null when the level would make the model too large.</returns>
    public Total? Number(int number) =>
        number switch
        {
            < 4 => Unplaced(number),
            4 or 5 => Moved(number == 4),
            _ => Level(part.Order[number - 6]),
        };

    /// <summary>Whether a demand has a failed delivery.</summary>
    public Total Failed(int demand) => new Total().Plus(1).Add(placements.Where(demand, candidate => candidate.Failed == 0), -1);

    private Total? Level(ObjectiveLevel level) =>
        level switch
        {
            ObjectiveLevel.Sets => new Total().Add(Pairs().Select(pair => pair.Broken)),
            ObjectiveLevel.Groups => Groups(),
            ObjectiveLevel.Distance => Distance(),
            ObjectiveLevel.Order => Order(),
            ObjectiveLevel.Rewritten => wiring.Rewritten(),
            ObjectiveLevel.TransmitBlocks => wiring.TransmitBlocks(),
            ObjectiveLevel.ReceiveBlocks => wiring.ReceiveBlocks(),
            _ => Weighted(candidate => candidate.Number),
        };

    private Total Unplaced(int tier)
    {
        var total = new Total();
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            if (part.Demands[demand].Tier == tier)
            {
                var weight = part.Demands[demand].Weight;
                total.Plus(weight);
                Weigh(total, demand, candidate => candidate.Failed - weight);
            }
        }

        return total;
    }

    private Total Moved(bool held)
    {
        var total = new Total();
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            var node = part.Demands[demand].Node;
            if (!node.Existing.IsNone && node.IsHeld == held)
            {
                total.Plus(1).Add(placements.Where(demand, candidate => candidate.First == node.Existing), -1);
            }
        }

        return total;
    }

    private Total Weighted(Func<PartCandidate, long> weight)
    {
        var total = new Total();
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            Weigh(total, demand, weight);
        }

        return total;
    }

    private void Weigh(Total total, int demand, Func<PartCandidate, long> weight)
    {
        for (var candidate = 0; candidate < placements.Chosen[demand].Length; candidate++)
        {
            total.Add(placements.Chosen[demand][candidate], weight(part.Demands[demand].Candidates[candidate]));
        }
    }

    /// <summary>Pairs of parts of a set with a variable that is true at least when they are on different devices with different numbers.</summary>
    private List<(int First, int Second, BoolVar Broken)> Pairs()
    {
        if (pairs is not null)
        {
            return pairs;
        }

        pairs = [];
        for (var second = 0; second < part.Demands.Count; second++)
        {
            var demand = part.Demands[second];
            for (var first = 0; demand.Set >= 0 && first < second; first++)
            {
                var other = part.Demands[first];
                if (other.Set == demand.Set && other.Part != demand.Part && other.Node.Entry == demand.Node.Entry)
                {
                    pairs.Add((first, second, Broken(first, second)));
                }
            }
        }

        return pairs;
    }

    private BoolVar Broken(int first, int second)
    {
        var broken = model.NewBoolVar("");
        var excused = new Total().Add(placements.Chosen[first]).Add(placements.Chosen[second]).Add(broken, -1);
        Excuse(candidate => candidate.Device);
        Excuse(candidate => candidate.Number);
        excused.AtMost(model, 1);
        return broken;

        void Excuse(Func<PartCandidate, int> trait)
        {
            var shared = part.Demands[first].Candidates.Select(trait).Intersect(part.Demands[second].Candidates.Select(trait)).Order();
            foreach (var value in shared)
            {
                var same = model.NewBoolVar("");
                new Total().Add(same).Add(placements.Where(first, candidate => trait(candidate) == value), -1).AtMost(model, 0);
                new Total().Add(same).Add(placements.Where(second, candidate => trait(candidate) == value), -1).AtMost(model, 0);
                excused.Add(same, -1);
            }
        }
    }

    private Total Groups()
    {
        var total = new Total();
        var groups = Enumerable.Range(0, part.Demands.Count).Where(demand => part.Demands[demand].Group >= 0).GroupBy(demand => part.Demands[demand].Group);
        foreach (var group in groups)
        {
            var devices = new Total();
            foreach (var device in group.SelectMany(demand => part.Demands[demand].Candidates).Select(candidate => candidate.Device).Distinct().Order())
            {
                var used = model.NewBoolVar("");
                foreach (var demand in group)
                {
                    new Total().Add(placements.Where(demand, candidate => candidate.Device == device)).Add(used, -1).AtMost(model, 0);
                }

                devices.Add(used);
                total.Add(used);
            }

            // The first device is free, and a group without any has no more than none.
            var isPlaced = model.NewBoolVar("");
            new Total().Add(isPlaced).Add(group.SelectMany(demand => placements.Chosen[demand]), -1).AtMost(model, 0);
            devices.Add(isPlaced, -1).AtLeast(model, 0);
            total.Add(isPlaced, -1);
        }

        return total;
    }

    private Total Distance()
    {
        var total = new Total();
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            var preferred = part.Demands[demand].Preferred;
            Weigh(total, demand, candidate => preferred > 0 ? Math.Abs(candidate.Number - preferred) : 0);
        }

        foreach (var (first, second, broken) in Pairs())
        {
            var most = part.Demands[first].Candidates.Concat(part.Demands[second].Candidates).Select(candidate => candidate.Number).DefaultIfEmpty(0).Max();
            var distance = model.NewIntVar(0, most, "");
            var difference = new Total().Add(distance, -1).Add(broken, most);
            Weigh(difference, first, candidate => candidate.Number);
            Weigh(difference, second, candidate => -candidate.Number);
            difference.AtMost(model, most);
            difference = new Total().Add(distance, -1).Add(broken, most);
            Weigh(difference, first, candidate => -candidate.Number);
            Weigh(difference, second, candidate => candidate.Number);
            difference.AtMost(model, most);
            total.Add(distance);
        }

        return total;
    }

    /// <summary>For two demands in one port group, at each number: the earlier one above it and the later one not above it is an inversion.</summary>
    private Total? Order()
    {
        var above = new Dictionary<(int Demand, int Group), SortedDictionary<int, BoolVar>>();
        var groups = part.Demands.Select(demand => demand.Candidates.Select(candidate => candidate.PortGroup).Distinct().Order().ToArray()).ToArray();
        var total = new Total();
        long terms = 0;
        for (var second = 0; second < part.Demands.Count; second++)
        {
            for (var first = 0; first < second; first++)
            {
                var shared = groups[first].Intersect(groups[second]).ToArray();
                if (shared.Length == 0)
                {
                    continue;
                }

                var opposed = model.NewBoolVar("");
                total.Add(opposed);
                foreach (var group in shared)
                {
                    var below = NumbersAbove(above, second, group);
                    foreach (var (number, isAbove) in NumbersAbove(above, first, group))
                    {
                        terms++;
                        var both = new Total()
                            .Add(isAbove)
                            .Add(placements.Where(second, candidate => candidate.PortGroup == group && candidate.Number <= number))
                            .Add(opposed, -1);
                        if (below.TryGetValue(number, out var later))
                        {
                            both = new Total()
                                .Add(isAbove)
                                .Add(placements.Where(second, candidate => candidate.PortGroup == group))
                                .Add(later, -1)
                                .Add(opposed, -1);
                        }

                        both.AtMost(model, 1);
                    }
                }

                if (terms > MostOrderTerms)
                {
                    return null;
                }
            }
        }

        return total;
    }

    /// <summary>For each number whether a demand is placed in a port group above it.</summary>
    private SortedDictionary<int, BoolVar> NumbersAbove(Dictionary<(int Demand, int Group), SortedDictionary<int, BoolVar>> known, int demand, int group)
    {
        if (known.TryGetValue((demand, group), out var above))
        {
            return above;
        }

        above = [];
        var candidates = part.Demands[demand]
            .Candidates.Where(candidate => candidate.PortGroup == group)
            .Select(candidate => candidate.Number)
            .Distinct()
            .ToArray();
        foreach (var number in candidates.SelectMany(number => (int[])[number - 1, number]).Distinct().Order())
        {
            var isAbove = model.NewBoolVar("");
            var placed = new Total().Add(placements.Where(demand, candidate => candidate.PortGroup == group && candidate.Number > number)).Add(isAbove, -1);
            placed.AtMost(model, 0);
            placed.AtLeast(model, 0);
            above.Add(number, isAbove);
        }

        known.Add((demand, group), above);
        return above;
    }
}
