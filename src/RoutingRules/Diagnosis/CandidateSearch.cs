using RoutingRules.Diagnosis.Candidates;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>The repairs that would meet wants of a show which are not met, none of which breaks another.</summary>
internal sealed class CandidateSearch
{
    /// <summary>What is not met beyond this is left for the next round.</summary>
    private const int MostSymptoms = 200;
    private const int MostCandidates = 2_000;

    private readonly HashSet<string> seen = new(StringComparer.Ordinal);
    private readonly Dictionary<int, List<Want>> metThrough = [];
    private readonly StepFinder finder;
    private readonly LabelMatch labels;

    public CandidateSearch(ResolvedShow show)
    {
        Show = show;
        Graph = show.Graph;
        Elements = new PatchElements(show);
        finder = new StepFinder(show.Graph);
        var wants = WantList.Of(show);
        Unmet = wants.FindAll(want => !want.IsMet);
        foreach (var want in Unmet.Take(MostSymptoms))
        {
            finder.Add(want);
        }

        IsCapped = Unmet.Count > MostSymptoms;
        labels = Unmet.Count == 0 ? LabelMatch.None : new LabelMatch(show);
        Work = finder.Work + wants.Count;
        foreach (var want in Unmet.Count == 0 ? [] : wants.Where(want => want.IsMet))
        {
            Mark(want);
        }
    }

    public ResolvedShow Show { get; }

    public SignalGraph Graph { get; }

    public PatchElements Elements { get; }

    /// <summary>The wants that are not met, in order.</summary>
    public List<Want> Unmet { get; }

    public IReadOnlyCollection<Step> Steps => finder.Found;

    public List<RepairCandidate> Found { get; } = [];

    /// <summary>True when there was too much to look at all of it.</summary>
    public bool IsCapped { get; private set; }

    public long Work { get; private set; }

    /// <summary>Looks for repairs; the best come first.</summary>
    public void Run()
    {
        if (Unmet.Count == 0)
        {
            return;
        }

        // Of repairs with one outcome the first is kept, so what mends a thing that is broken goes before what goes around it.
        WidthCandidates.Add(this);
        BrokenEnds.Add(this);
        RunCandidates.Add(this, Hop.Route);
        RunCandidates.Add(this, Hop.Cable);
        StreamCandidates.Add(this);
        Found.Sort(Compare);
    }

    /// <summary>Takes a repair in when it meets a want and breaks none.</summary>
    /// <param name="kind">What it does.</param>
    /// <param name="hop">On what.</param>
    /// <param name="cost">What it asks of hands.</param>
    /// <param name="change">The change.</param>
    /// <param name="distance">By how many points a run moves back.</param>
    public void Add(RepairKind kind, Hop hop, int cost, PatchChange change, int distance = 0)
    {
        if (Found.Count >= MostCandidates)
        {
            IsCapped = true;
            return;
        }

        var overlay = Elements.With(change);
        if (overlay.Changed.Count == 0 || !seen.Add(string.Join(',', overlay.Changed.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key}>{pair.Value}"))))
        {
            return;
        }

        var solved = Touched(overlay, finder.Passed).FindAll(want => !Want.Meet(overlay, want.Places, want.Sources, want.Width).IsNone);
        if (solved.Count > 0 && Touched(overlay, metThrough).TrueForAll(want => want.IsKept(overlay)))
        {
            Found.Add(
                new RepairCandidate
                {
                    Kind = kind,
                    Hop = hop,
                    Change = change,
                    Overlay = overlay,
                    Distance = distance,
                    Rank = cost + (2 * overlay.Irregularity()) + (3 * labels.Change(overlay)),
                    Solved = solved,
                }
            );
        }

        Work += overlay.Work + overlay.Changed.Count;
    }

    private static List<Want> Touched(Overlay overlay, Dictionary<int, List<Want>> table)
    {
        var touched = new HashSet<Want>();
        foreach (var point in overlay.Changed.Keys)
        {
            if (table.TryGetValue(point, out var wants))
            {
                touched.UnionWith(wants);
            }
        }

        return [.. touched.OrderBy(want => want.Demand.Index).ThenBy(want => want.Places[0])];
    }

    private void Mark(Want want)
    {
        for (var position = 0; position < want.Width; position++)
        {
            foreach (var point in Graph.Upward(want.MetAt + position))
            {
                Work++;
                if (!metThrough.TryGetValue(point.Value, out var wants))
                {
                    metThrough.Add(point.Value, wants = []);
                }

                wants.Add(want);
            }
        }
    }

    private static int Compare(RepairCandidate x, RepairCandidate y)
    {
        var order = y.Solved.Count.CompareTo(x.Solved.Count);
        order = order != 0 ? order : x.Rank.CompareTo(y.Rank);
        order = order != 0 ? order : x.Kind.CompareTo(y.Kind);
        order = order != 0 ? order : x.Hop.CompareTo(y.Hop);
        return order != 0 ? order : string.CompareOrdinal(Key(x), Key(y));
    }

    private static string Key(RepairCandidate candidate) =>
        string.Join(',', candidate.Overlay.Changed.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key:D7}>{pair.Value:D7}"));
}
