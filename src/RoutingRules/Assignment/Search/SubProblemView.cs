using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Search;

/// <summary>What a strategy sees of a part, made from the engine's own layout when it is asked for.</summary>
internal sealed class SubProblemView(AssignmentProblem problem, Evaluator evaluator, Part part, long budget) : AssignmentPart
{
    private const long WiringBudget = 50_000;

    private IReadOnlyList<PartDemand>? demands;
    private IReadOnlyList<PartTransmitBlock>? transmitBlocks;
    private IReadOnlyList<PartReceiveBlock>? receiveBlocks;
    private IReadOnlyList<PartLink>? links;
    private (StrategyAnswer Answer, SearchResult Result)? known;

    public AssignmentProblem Problem => problem;

    public Evaluator Evaluator => evaluator;

    public Part Inner => part;

    public override ResolvedShow Show => problem.Show;

    public override AssignmentOptions Options => problem.Options;

    public override IReadOnlyList<ObjectiveLevel> Order => evaluator.Order;

    public override long Budget => budget;

    public override IReadOnlyList<PartDemand> Demands => demands ??= SubProblemViews.Demands(problem, part);

    public override IReadOnlyList<PartTransmitBlock> TransmitBlocks => transmitBlocks ??= SubProblemViews.TransmitBlocks(problem);

    public override IReadOnlyList<PartReceiveBlock> ReceiveBlocks => receiveBlocks ??= SubProblemViews.ReceiveBlocks(problem);

    public override int TransmitBlockOf(PointIndex point) => problem.TransmitBlockOf[point.Value];

    public override int ReceiveBlockOf(PointIndex point) => problem.ReceiveBlockOf[point.Value];

    public override SlotContent ContentOf(PointIndex slot)
    {
        var always = problem.Show.Graph.FixedSource(slot);
        var isForced = always is not null && !problem.Show.Graph.IsClearable(slot);
        return problem.TransmitBlocks[problem.TransmitBlockOf[slot.Value]].IsKept
            ? new SlotContent(true, new PointIndex(Math.Max(problem.Show.Graph.Upstreams[slot.Value], -1)), isForced && always is { IsNone: false })
            : new SlotContent(isForced, isForced ? always!.Value : PointIndex.None, isForced && always is { IsNone: false });
    }

    public override IReadOnlyList<(PointIndex Slot, PointIndex Source)> Filling(PointIndex slot, PointIndex source)
    {
        var graph = problem.Show.Graph;
        if (slot == source)
        {
            return graph.Upstream(slot) is { Value: >= 0 } before ? [(slot, before)] : [];
        }

        if (ContentOf(slot) is { IsSettled: true } settled)
        {
            return settled.Content == source && !source.IsNone ? [(slot, source)] : [];
        }

        if (graph.FixedSource(slot) is { } always)
        {
            return always == source ? [(slot, source)] : [];
        }

        if (
            problem.Blocks.Find(source.Value, slot.Value) is { } block
            && problem.Blocks.IsLeftEmpty(block.FirstSink + block.Size, block.FirstSink, block.FirstSource)
        )
        {
            return [];
        }

        if (problem.Blocks.Find(source.Value, slot.Value) is { Size: > 1 } together)
        {
            var filling = new (PointIndex, PointIndex)[together.Size];
            for (var position = 0; position < together.Size; position++)
            {
                filling[position] = (new PointIndex(together.FirstSink + position), new PointIndex(together.FirstSource + position));
            }

            return Array.TrueForAll(filling, pair => problem.TransmitBlockOf[pair.Item1.Value] >= 0 && !ContentOf(pair.Item1).IsSettled) ? filling : [];
        }

        return graph.RoutingBetween(source, slot) is { Mode: RoutingMode.Free } || problem.Blocks.Find(source.Value, slot.Value) is not null
            ? [(slot, source)]
            : [];
    }

    public override PointIndex ReceiveSlotOf(PointIndex sink) => new(problem.ReceiveSlotOf(sink.Value));

    public override bool CanTake(PointIndex sink, PartReceiveBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        return problem.Show.Graph.DeviceOf(sink).Index == block.Device && problem.Show.Graph.RoutingBetween(block.First, sink) is { Mode: RoutingMode.Free };
    }

    public override IReadOnlyList<PointIndex> OutputsFedBy(PointIndex slot) => SubProblemViews.Points(problem.FixedOutputsOf[slot.Value]);

    public override IReadOnlyList<PointIndex> RoutedTogether(PointIndex output) => SubProblemViews.Points(problem.BlockOf[output.Value] ?? []);

    public override bool MustBeSilent(PointIndex output) => problem.MustBeSilent[output.Value];

    public override PointIndex ToleratedAt(PointIndex output) => new(Math.Max(problem.Tolerated[output.Value], -1));

    public override bool IsSpare(PointIndex output) => problem.IsSpare[output.Value];

    public override bool IsPrivate(PointIndex source) => problem.Exposure.IsPrivate(source.Value);

    public override bool IsExposed(PointIndex slot) => problem.Exposure.IsExposed(problem.Show.Graph, slot.Value);

    public override bool IsBarred(PointIndex point) => problem.IsBarred[point.Value];

    public override int NetworkBetween(int sender, int receiver) => problem.NetworkFrom(sender, receiver);

    public override IReadOnlyList<int> LinksBetween(int sender, int receiver) =>
        NetworkBetween(sender, receiver) is >= 0 and var network
            ? problem.Network.Path(network, problem.Show.Devices[sender], problem.Show.Devices[receiver]) ?? []
            : [];

    public override IReadOnlyList<PartLink> Links => links ??= SubProblemViews.Links(problem);

    public override IReadOnlyList<int> LinksPassed(int sender, int receiver) => problem.Links.Crossed(NetworkBetween(sender, receiver), sender, receiver);

    public override long LoadOf(int transmitBlock, int link) => problem.Links.Rate(problem.Links.UnitOf(transmitBlock), link);

    public override int SentLimit(int device) => problem.SentLimit[device];

    public override int ReceivedLimit(int device) => problem.ReceivedLimit[device];

    public override int PortGroupOf(PointIndex point) => problem.PortGroupOf[point.Value];

    public override int UsableOutputs(int portGroup) => problem.UsableOutputs[portGroup];

    public override ObjectiveVector? Score(IReadOnlyList<int> choices)
    {
        ArgumentNullException.ThrowIfNull(choices);
        if (choices.Count != part.Active.Length)
        {
            throw new ArgumentException($"There are {choices.Count} choices for {part.Active.Length} demands.", nameof(choices));
        }

        for (var i = 0; i < choices.Count; i++)
        {
            if (choices[i] < StrategyAnswer.LeftOut || choices[i] >= part.Choices[part.Active[i]].Length)
            {
                throw new ArgumentException($"Choice {i} is no position of a candidate.", nameof(choices));
            }
        }

        return evaluator.Evaluate(part.Active, ToChoices(choices), null, WiringBudget, null, out _) is { } score
            ? new ObjectiveVector { Values = [.. score.Numbers] }
            : null;
    }

    public override IReadOnlyList<int>? Construct(CancellationToken cancellation) =>
        new GreedySearch(problem, evaluator, part, cancellation).Run(null, 0) is { } found ? ToAnswer(found.Choices) : null;

    /// <summary>Positions in the lists of allowed candidates as choices for every demand of the show.</summary>
    public int[] ToChoices(IReadOnlyList<int> positions)
    {
        var choices = GreedySearch.NewChoices(problem);
        for (var i = 0; i < part.Active.Length; i++)
        {
            choices[part.Active[i]] = positions[i] < 0 ? Evaluator.Unplaced : part.Choices[part.Active[i]][positions[i]];
        }

        return choices;
    }

    /// <summary>An answer of a built-in search, which need not be scored again.</summary>
    public StrategyAnswer Answer(SearchResult found)
    {
        var answer = new StrategyAnswer { Choices = [.. ToAnswer(found.Choices)], ProvenNumbers = found.ProvenNumbers };
        known = (answer, found);
        return answer;
    }

    /// <summary>The result behind an answer of a built-in search; null for other answers.</summary>
    public SearchResult? Known(StrategyAnswer answer) => known is { } pair && ReferenceEquals(pair.Answer, answer) ? pair.Result : null;

    private int[] ToAnswer(int[] choices) =>
        Array.ConvertAll(part.Active, index => choices[index] < 0 ? StrategyAnswer.LeftOut : Array.IndexOf(part.Choices[index], choices[index]));
}
