using RoutingRules.Diagnosis;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>A clean show with a fault in it, and what diagnosis makes of it.</summary>
internal sealed class Planted
{
    private Planted(Show clean, Show faulty, ResolvedShow resolved, CheckResult check)
    {
        Clean = clean;
        Faulty = faulty;
        Check = check;
        var diagnosed = Diagnostician.Run(CleanShows.Engine.Checker, CleanShows.Engine.FixProviders, resolved, check, default);
        Causes = diagnosed.Causes;
        Work = diagnosed.Work;
    }

    public Show Clean { get; }

    public Show Faulty { get; }

    public CheckResult Check { get; }

    public ValueList<Cause> Causes { get; }

    /// <summary>Units of work of the diagnosis.</summary>
    public long Work { get; }

    /// <summary>Units of work of the check before it.</summary>
    public long CheckWork => Check.Rules.Sum(rule => rule.WorkUnits);

    /// <summary>True when no rule says anything graver than a note.</summary>
    public bool IsSilent => Check.Worst is null or Severity.Note;

    /// <summary>
    /// True when the repairs, those of all causes one after the other, bring back to every output and channel what it carried in the clean show, and no
    /// rule says anything graver than a note. Of a tie either repair may be the one.
    /// </summary>
    public bool IsRestored => Mended(Faulty, 0).Any(IsWhole) || IsWhole(OneAfterTheOther());

    private bool IsWhole(Show mended) => Carried(mended).SequenceEqual(Carried(Clean)) && CleanShows.Engine.Check(mended).Worst is null or Severity.Note;

    /// <summary>As somebody would do it: the first cause is mended, then the show is checked again.</summary>
    private Show OneAfterTheOther()
    {
        var show = Faulty;
        for (var round = 0; round < Causes.Count; round++)
        {
            var resolved = CleanShows.Engine.Resolve(show);
            if (CleanShows.Engine.Diagnose(resolved, CleanShows.Engine.Check(resolved)) is not [{ Repair.Edits.IsEmpty: false }, ..])
            {
                return show;
            }

            show = CleanShows.Engine.FixCause(show, 1).Show;
        }

        return show;
    }

    /// <summary>The show with one repair of each cause from a position on; what does not fit gives none.</summary>
    private IEnumerable<Show> Mended(Show show, int cause) =>
        cause == Causes.Count
            ? [show]
            : new[] { Causes[cause].Repair }
                .Concat(Causes[cause].Alternatives)
                .Select(repair => Applied(show, repair))
                .OfType<Show>()
                .SelectMany(mended => Mended(mended, cause + 1));

    private static Show? Applied(Show show, Fix repair)
    {
        // The repairs name places of the show as it stood; what others put in or took out before moves them.
        foreach (var edit in repair.Edits)
        {
            if ((edit.Apply(show) ?? Elsewhere(show, edit)) is not { } edited)
            {
                return null;
            }

            show = edited;
        }

        return show;
    }

    private static Show? Elsewhere(Show show, ShowEdit edit)
    {
        for (var i = 0; i < 200; i++)
        {
            if (edit.At(i)?.Apply(show) is { } edited)
            {
                return edited;
            }
        }

        return null;
    }

    /// <summary>What sounds otherwise than in the clean show, for people who look for what a rule should have said.</summary>
    public IEnumerable<string> Differences() =>
        Carried(Clean)
            .Except(Carried(Faulty), StringComparer.Ordinal)
            .Select(line => $"was {line}")
            .Concat(Carried(Faulty).Except(Carried(Clean), StringComparer.Ordinal).Select(line => $"is {line}"));

    /// <summary>A fault planted; null when it changes neither what sounds anywhere nor what the rules say.</summary>
    public static Planted? Of(Show clean, Show? faulty)
    {
        if (faulty is null || faulty.Equals(clean))
        {
            return null;
        }

        var resolved = CleanShows.Engine.Resolve(faulty);
        var check = CleanShows.Engine.Check(resolved);
        return check.Worst is null or Severity.Note && Carried(faulty).SequenceEqual(Carried(clean)) ? null : new Planted(clean, faulty, resolved, check);
    }

    /// <summary>
    /// What sounds at every input, output and channel. An input without a cable sounds where a line may have its microphone, else nobody hears it: an
    /// amplifier whose unused input loses a silent cable is as silent as before.
    /// </summary>
    private static List<string> Carried(Show show)
    {
        var carried = new List<string>();
        var resolved = CleanShows.Engine.Resolve(show);
        var graph = resolved.Graph;
        var microphones = resolved.Demands.Where(demand => demand.Line is not null).SelectMany(Inputs).ToHashSet();
        foreach (var device in show.Rig.Devices)
        {
            var node = graph.Device(device.Id)!;
            foreach (var group in node.Groups)
            {
                for (var i = 0; group.Kind is PortKind.Input or PortKind.Output or PortKind.Sink && i < group.Count; i++)
                {
                    var at = node.First(group) + i;
                    var origin = graph.Origin(at);
                    var isHeard = !origin.IsNone && (graph.GroupOf(origin).Kind != PortKind.Input || microphones.Contains(origin));
                    carried.Add($"{graph.Address(at)} {(isHeard ? graph.Address(origin).ToString() : "")}");
                }
            }
        }

        return carried;
    }

    private static IEnumerable<PointIndex> Inputs(DemandNode demand) =>
        demand
            .Allowed.Append(demand.Existing)
            .Where(run => !run.IsNone)
            .SelectMany(run => Enumerable.Range(0, demand.Width).Select(position => run + position));
}
