using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>What the input alone settles: demands, where they stand, and which streams must stay.</summary>
internal sealed class AssignmentFacts
{
    private readonly HashSet<Id<Device>> mentioned = [];
    private readonly HashSet<Id<AudioStream>> staying;
    private readonly HashSet<Point> lineOutputs;

    public AssignmentFacts(Show input, AssignmentOptions options, Func<Id<DeviceProfile>, DeviceProfile?> profiles)
    {
        Input = input;
        Options = options;
        Rig = new RigFacts(input, profiles, options.Without);
        Networks = new NetworkFacts(Rig);
        Before = new PatchTrace(Rig, input.Patch);
        Privacy = new PrivacyFacts(input, Rig);
        Ears = new Lazy<EarFacts>(() => new EarFacts(Rig, Before));
        var demands = DemandList.Of(input, Rig, Before);
        ExistingSearch.Run(demands, Rig, Before);
        Demands = demands;
        Privacy.Trust(demands);
        lineOutputs = input
            .Lines.SelectMany(line => line.To.Where(sink => sink.Width == line.Width))
            .SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i]))
            .ToHashSet();
        foreach (var run in Demands.SelectMany(demand => (RunSet[])[demand.Runs, demand.EvenRuns]).Distinct().SelectMany(runs => runs))
            mentioned.Add(run.Device);

        foreach (var demand in Demands)
            Mention(demand);

        StayingStreams = input.Patch.Streams.Where(MustStay).ToList();
        staying = StayingStreams.Select(stream => stream.Id).ToHashSet();
    }

    public Show Input { get; }

    public AssignmentOptions Options { get; }

    public RigFacts Rig { get; }

    public NetworkFacts Networks { get; }

    /// <summary>The input patch.</summary>
    public PatchTrace Before { get; }

    public IReadOnlyList<DemandFacts> Demands { get; }

    /// <summary>What loudspeakers must not play.</summary>
    public PrivacyFacts Privacy { get; }

    /// <summary>What is heard in somebody's ears; asked only where latency has a limit.</summary>
    public Lazy<EarFacts> Ears { get; }

    /// <summary>True for an output that a line names as a place to be brought to.</summary>
    public bool IsLineOutput(Point output) => lineOutputs.Contains(output);

    /// <summary>Streams of the input that stay whole although they may carry no demand.</summary>
    public IReadOnlyList<AudioStream> StayingStreams { get; }

    /// <summary>True when the options keep a demand from a place: it is to be left out, or to avoid just that place.</summary>
    public bool IsForbidden(DemandFacts demand, PointRange? place) =>
        Options.LeaveOut.Contains(demand.Key) || Options.Avoid.Any(avoided => avoided.Demand == demand.Key && avoided.At == place);

    /// <summary>True when a device that a demand starts or ends at routes in blocks.</summary>
    public bool RoutesInBlocks =>
        Demands.SelectMany(DevicesOf).Any(device => Rig.Device(device)?.Profile?.Routing.Any(entry => entry.Mode == RoutingMode.Block) ?? false);

    /// <summary>True for a stream that must stay, by its id.</summary>
    public bool IsStaying(AudioStream stream) => staying.Contains(stream.Id);

    /// <summary>True when a device holds a point that may serve a demand, or a demand names it.</summary>
    public bool IsMentioned(Id<Device> device) => mentioned.Contains(device);

    /// <summary>True when the run may be the place of the demand, marks and neighbours apart.</summary>
    public static bool Allows(DemandFacts demand, PointRange at) =>
        demand.IsSplit ? demand.Runs[0] == at : demand.Runs.Contains(at) || (demand.Existing == at && demand.EvenRuns.Contains(at));

    /// <summary>A pin that cannot be honoured because what it names is excluded or not there: it is left out, not contradicted.</summary>
    public bool IsPinOutOfUse(DemandFacts demand) =>
        demand.Runs.All(IsExcluded) || (demand.Feed is { } feed && (!Rig.Exists(feed.Source) || IsExcluded(feed.Source)));

    /// <summary>True when any point of a run must not be used.</summary>
    public bool IsExcluded(PointRange run) => Enumerable.Range(0, run.Width).Any(i => Rig.IsExcluded(run[i]));

    private static IEnumerable<Id<Device>> DevicesOf(DemandFacts demand) =>
        demand.Runs.Select(run => run.Device).Concat(demand.Feed is { } feed ? [feed.Source.Device] : demand.Line!.To.Select(sink => sink.Device));

    private void Mention(DemandFacts demand)
    {
        if (demand.Line is { } line)
        {
            mentioned.UnionWith(line.To.Select(sink => sink.Device));
            mentioned.UnionWith(line.From.Devices);
            return;
        }

        var to = demand.Feed!.To[demand.Entry];
        mentioned.UnionWith(to.Devices);
        if (to.At is { } at)
            mentioned.Add(at.Device);
    }

    private bool MustStay(AudioStream stream)
    {
        if (Rig.IsExcluded(stream.From.Device) || (!stream.To.IsEmpty && stream.To.All(receiver => Rig.IsExcluded(receiver.At.Device))))
            return false;

        return stream.Keep || (!stream.To.IsEmpty && !stream.To.Any(receiver => IsMentioned(receiver.At.Device)));
    }
}
