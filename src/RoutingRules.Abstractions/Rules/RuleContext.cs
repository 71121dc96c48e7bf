using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>The door through which a rule sees the show and reports. Work is counted here: rules write nothing for it.</summary>
/// <remarks>
/// Not thread safe; made by the engine for each run, in which the rules take turns with it.
/// </remarks>
public sealed partial class RuleContext
{
    private readonly ResolvedShow show;
    private readonly WorkMeter meter;
    private readonly List<Finding> findings;
    private RuleDescriptor descriptor;
    private Severity severity;
    private ValueList<RuleOptionValue> options;

    // Value lists, boxed once and not on every call.
    private IReadOnlyList<InputSettings>? inputSettings;
    private IReadOnlyList<PointLabel>? labels;
    private string? undecided;

    internal RuleContext(
        ResolvedShow show,
        RuleDescriptor descriptor,
        Severity severity,
        ValueList<RuleOptionValue> options,
        WorkMeter meter,
        List<Finding> findings
    )
    {
        this.options = options;
        this.show = show;
        this.descriptor = descriptor;
        this.severity = severity;
        this.meter = meter;
        this.findings = findings;
    }

    internal string? Undecided => undecided;

    internal void NextSubject()
    {
        undecided = null;
        looked = null;
    }

    /// <summary>The document's own members: title, date, revision.</summary>
    public Show Document => show.Document;

    /// <summary>The rig as written, for ids of zones, clocks and profiles.</summary>
    public Rig Rig => show.Document.Rig;

    /// <summary>The devices, in rig order.</summary>
    public Counted<DeviceNode> Devices => new(show.Devices, meter);

    /// <summary>The routes, in document order.</summary>
    public Counted<RouteNode> Routes => new(show.Routes, meter);

    /// <summary>Sinks claimed more than once, in document order.</summary>
    public Counted<SinkConflict> Conflicts => new(show.Conflicts, meter);

    /// <summary>Sinks at which a route has no effect, in document order.</summary>
    public Counted<IdleRoute> IdleRoutes => new(show.IdleRoutes, meter);

    /// <summary>The streams, in document order.</summary>
    public Counted<StreamNode> Streams => new(show.Streams, meter);

    /// <summary>The cables, in document order.</summary>
    public Counted<CableNode> Cables => new(show.Cables, meter);

    /// <summary>The links, in document order.</summary>
    public Counted<LinkNode> Links => new(show.Links, meter);

    /// <summary>The feeds, in document order.</summary>
    public Counted<FeedNode> Feeds => new(show.Feeds, meter);

    /// <summary>The lines, in document order.</summary>
    public Counted<LineNode> Lines => new(show.Lines, meter);

    /// <summary>The demands of feeds and lines, in demand order.</summary>
    public Counted<DemandNode> Demands => new(show.Demands, meter);

    /// <summary>Settings of inputs, in document order.</summary>
    public Counted<InputSettings> InputSettings
    {
        get
        {
            var patch = show.Document.Patch;
            return new(inputSettings ??= patch.Inputs, meter);
        }
    }

    /// <summary>Labels, in document order.</summary>
    public Counted<PointLabel> Labels
    {
        get
        {
            var patch = show.Document.Patch;
            return new(labels ??= patch.Labels, meter);
        }
    }

    /// <summary>Dead and reserved points, in document order.</summary>
    public Counted<MarkedPoint> Marks => new(show.Marks, meter);

    /// <summary>Network paths over the links.</summary>
    public NetworkMap Network => Count().Network;

    /// <summary>The value of an option of the rule: the one set by configuration, else its default.</summary>
    /// <exception cref="InvalidOperationException">The rule's descriptor does not name the option.</exception>
    public double Value(RuleOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        return OptionValues.Of(descriptor, options, option);
    }

    /// <summary>The value of an option that is a whole number.</summary>
    /// <exception cref="InvalidOperationException">The rule's descriptor does not name the option, or it takes fractions.</exception>
    public int WholeValue(RuleOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        return option.IsWhole ? (int)Value(option) : throw new InvalidOperationException($"Option {option.Name} takes fractions.");
    }

    /// <summary>Finds the first point of a run.</summary>
    public ConnectionState Find(PointRange range, out PointIndex first) => Count().Graph.Find(range, out first);

    /// <summary>The device of an id, or null.</summary>
    public DeviceNode? Device(Id<Device> id) => Count().Graph.Device(id);

    /// <summary>The device of a point.</summary>
    public DeviceNode DeviceOf(PointIndex point) => Count().Graph.DeviceOf(point);

    /// <summary>The port group of a point.</summary>
    public GroupNode GroupOf(PointIndex point) => Count().Graph.GroupOf(point);

    /// <summary>The number of a point in its group, from 1.</summary>
    public int NumberOf(PointIndex point) => Count().Graph.NumberOf(point);

    /// <summary>The address of a point.</summary>
    public Point Address(PointIndex point) => Count().Graph.Address(point);

    /// <summary>The address of a run.</summary>
    public PointRange Address(PointIndex first, int width) => Count().Graph.Address(first, width);

    /// <summary>The mark of a dead or reserved point, or null.</summary>
    public MarkedPoint? MarkOf(PointIndex point) => Count().MarkOf(point);

    /// <summary>The point that feeds a point; none when nothing does.</summary>
    public PointIndex Upstream(PointIndex point) => Count().Graph.Upstream(point);

    /// <summary>A point and all that feeds it, hop by hop, each point once: the way up that ends also in a loop. Empty for none.</summary>
    public UpwardWalk Upward(PointIndex point) => new(show.Graph, point, meter);

    /// <summary>What brings signal to a point.</summary>
    public HopKind Via(PointIndex point) => Count().Graph.Via(point);

    /// <summary>Position of that route, stream, cable or link in its list, from 0; -1 for other hops.</summary>
    public int ViaIndex(PointIndex point) => Count().Graph.ViaIndex(point);

    /// <summary>The real source a point carries; none when silent or in a loop.</summary>
    public PointIndex Origin(PointIndex point) => Count().Graph.Origin(point);

    /// <summary>True when the point sits in or behind a loop.</summary>
    public bool IsLooping(PointIndex point) => Count().Graph.IsLooping(point);

    /// <summary>True when signal runs in a circle anywhere.</summary>
    public bool HasLoops
    {
        get
        {
            var graph = show.Graph;
            meter.Add(1 + graph.PointCount);
            return graph.HasLoops;
        }
    }

    /// <summary>True when a point is fed, over any number of hops, by another, or is that point.</summary>
    public bool IsFedBy(PointIndex point, PointIndex source)
    {
        foreach (var passed in Upward(point))
        {
            if (passed == source)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The points directly fed by a point, in ascending order.</summary>
    public ReadOnlySpan<int> Fed(PointIndex point)
    {
        var fed = show.Graph.Fed(point);
        meter.Add(1 + fed.Length);
        return fed;
    }

    /// <summary>The source a fixed sink always takes, none for fixed silence, null when not fixed.</summary>
    public PointIndex? FixedSource(PointIndex sink) => Count().Graph.FixedSource(sink);

    /// <summary>The source that feeds a point before any patch.</summary>
    public PointIndex FactorySource(PointIndex sink) => Count().Graph.FactorySource(sink);

    /// <summary>The routing entry between the groups of two points of one device; null when nothing may be routed.</summary>
    public RoutingEntry? RoutingBetween(PointIndex from, PointIndex to) => Count().Graph.RoutingBetween(from, to);

    /// <summary>What is wrong with the profile of a device; empty when sound.</summary>
    public ValueList<ProfileProblem> ProfileProblems(DeviceNode device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Count();
        return device.Type.Problems;
    }

    /// <summary>The demand of a feed's entry.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="entry">Position in its <c>to</c>, from 0.</param>
    public DemandNode Demand(FeedNode feed, int entry)
    {
        ArgumentNullException.ThrowIfNull(feed);
        return Count().Demands[feed.FirstDemand + entry];
    }

    /// <summary>The demand of a line.</summary>
    public DemandNode Demand(LineNode line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Count().Demands[line.Demand];
    }

    /// <summary>The demand that a point serves in the patch as it stands, or null.</summary>
    public DemandNode? DemandAt(PointIndex point) => Count().DemandAt(point);

    /// <summary>Reports a finding.</summary>
    /// <param name="message">What is wrong and where, for a person: a sentence or two.</param>
    /// <param name="pointer">The place in the document as a JSON Pointer.</param>
    /// <param name="entities">What it is about; the identity of the finding is made from these, so name what does not change with position or text.</param>
    public void Report(string message, string pointer, params ReadOnlySpan<Entity> entities) => Report(severity, message, pointer, entities);

    /// <summary>Reports a finding milder or graver than the rule's usual severity; a severity set by configuration wins.</summary>
    /// <param name="usual">The severity when the configuration sets none.</param>
    /// <param name="message">What is wrong and where, for a person.</param>
    /// <param name="pointer">The place in the document as a JSON Pointer.</param>
    /// <param name="entities">What it is about.</param>
    public void ReportAs(Severity usual, string message, string pointer, params ReadOnlySpan<Entity> entities) =>
        Report(severity == descriptor.Severity ? usual : severity, message, pointer, entities);

    /// <summary>Says that the rule could not decide about the subject; what it reported about it stays.</summary>
    /// <param name="reason">What is missing.</param>
    public void CouldNotDecide(string reason)
    {
        ArgumentException.ThrowIfNullOrEmpty(reason);
        undecided = reason;
    }

    private void Report(Severity effective, string message, string pointer, ReadOnlySpan<Entity> entities)
    {
        ArgumentException.ThrowIfNullOrEmpty(message);
        ArgumentNullException.ThrowIfNull(pointer);
        findings.Add(
            new Finding
            {
                Rule = descriptor.Id,
                Name = descriptor.Name,
                Severity = effective,
                Message = message,
                Remedy = descriptor.Remedy,
                Entities = ValueList.Create(entities),
                Pointer = pointer,
            }
        );
    }

    private ResolvedShow Count()
    {
        meter.Add(1);
        return show;
    }
}
