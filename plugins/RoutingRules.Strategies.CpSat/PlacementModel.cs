using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Which candidate each demand takes, with what limits that whatever the wiring is.</summary>
internal sealed class PlacementModel
{
    private readonly AssignmentPart part;

    public PlacementModel(AssignmentPart part)
    {
        this.part = part;
        Chosen = new BoolVar[part.Demands.Count][];
        for (var demand = 0; demand < Chosen.Length; demand++)
        {
            Chosen[demand] = new BoolVar[part.Demands[demand].Candidates.Count];
            for (var candidate = 0; candidate < Chosen[demand].Length; candidate++)
            {
                Chosen[demand][candidate] = Model.NewBoolVar("");
            }

            if (part.Demands[demand].IsFirm)
            {
                Model.AddExactlyOne(Chosen[demand]);
            }
            else
            {
                Model.AddAtMostOne(Chosen[demand]);
            }
        }

        AddClaims();
        AddSpares();
        AddSeparations();
    }

    public CpModel Model { get; } = new();

    /// <summary>For each demand and candidate whether it is chosen.</summary>
    public BoolVar[][] Chosen { get; }

    /// <summary>The variables of a demand's candidates that satisfy a condition.</summary>
    public IEnumerable<BoolVar> Where(int demand, Func<PartCandidate, bool> condition)
    {
        var candidates = part.Demands[demand].Candidates;
        for (var candidate = 0; candidate < candidates.Count; candidate++)
        {
            if (condition(candidates[candidate]))
            {
                yield return Chosen[demand][candidate];
            }
        }
    }

    private void AddClaims()
    {
        var claimants = new SortedDictionary<int, List<BoolVar>>();
        for (var demand = 0; demand < Chosen.Length; demand++)
        {
            for (var candidate = 0; candidate < Chosen[demand].Length; candidate++)
            {
                foreach (var point in part.Demands[demand].Candidates[candidate].Claims)
                {
                    if (!claimants.TryGetValue(point.Value, out var list))
                    {
                        claimants.Add(point.Value, list = []);
                    }

                    list.Add(Chosen[demand][candidate]);
                }
            }
        }

        foreach (var list in claimants.Values)
        {
            Model.AddAtMostOne(list);
        }
    }

    private void AddSpares()
    {
        if (part.Options.Spares == 0)
        {
            return;
        }

        var used = new SortedDictionary<int, Total>();
        var asking = new SortedDictionary<int, List<BoolVar>>();
        for (var demand = 0; demand < Chosen.Length; demand++)
        {
            for (var index = 0; part.Demands[demand].Node.Feed is not null && index < Chosen[demand].Length; index++)
            {
                var candidate = part.Demands[demand].Candidates[index];
                if (!used.TryGetValue(candidate.PortGroup, out var total))
                {
                    used.Add(candidate.PortGroup, total = new Total());
                    asking.Add(candidate.PortGroup, []);
                }

                total.Add(Chosen[demand][index], candidate.Claims.Count(part.IsSpare));
                if (candidate.AsksForSpares)
                {
                    asking[candidate.PortGroup].Add(Chosen[demand][index]);
                }
            }
        }

        foreach (var (group, total) in used)
        {
            var usable = part.UsableOutputs(group);
            foreach (var chosen in asking[group])
            {
                // Without a new demand all usable outputs may be taken.
                Model.Add(total.ToExpression() <= usable - part.Options.Spares).OnlyEnforceIf(chosen);
            }
        }
    }

    private void AddSeparations()
    {
        for (var demand = 0; demand < Chosen.Length; demand++)
        {
            foreach (var separation in part.Demands[demand].Separations)
            {
                if (separation.Other < demand || separation.By == SeparationBy.Link)
                {
                    continue;
                }

                foreach (var device in Devices(demand))
                {
                    foreach (var other in Devices(separation.Other))
                    {
                        if (separation.By == SeparationBy.Device ? device == other : SharePower(device, other))
                        {
                            Model.AddAtMostOne([
                                .. Where(demand, candidate => candidate.Device == device),
                                .. Where(separation.Other, candidate => candidate.Device == other),
                            ]);
                        }
                    }
                }
            }
        }
    }

    private SortedSet<int> Devices(int demand) => [.. part.Demands[demand].Candidates.Select(candidate => candidate.Device)];

    private bool SharePower(int first, int second) =>
        part.Show.Devices[first].Model.Power.Any(supply => part.Show.Devices[second].Model.Power.Contains(supply));
}
