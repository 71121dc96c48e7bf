using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Writes choices and their wiring as a patch: what the input says stays unless it has to change.</summary>
internal sealed class PatchWriter
{
    private readonly AssignmentProblem problem;
    private readonly WiringPlan wiring;
    private readonly WantedRoutes routes;
    private readonly PatchStreams streams;
    private readonly Leftovers leftovers;

    public PatchWriter(AssignmentProblem problem, int[] choices, WiringPlan wiring)
    {
        this.problem = problem;
        this.wiring = wiring;
        routes = new WantedRoutes(problem);
        streams = new PatchStreams(problem, wiring);
        leftovers = new Leftovers(problem, new PlacedPoints(problem, choices), routes);
        foreach (var demand in problem.Demands)
        {
            foreach (var delivery in choices[demand.Index] < 0 ? [] : demand.Candidates[choices[demand.Index]].Deliveries)
            {
                WantDelivery(delivery);
            }
        }
    }

    /// <summary>Channels that no line with a place names and that would have carried a placed line, in point order.</summary>
    public List<PointIndex> Cleared => leftovers.Cleared;

    /// <summary>Streams of the input that are gone, in document order.</summary>
    public List<Id<AudioStream>> RemovedStreams => streams.Removed;

    /// <summary>Writes the patch, then clears outputs and channels that would carry what nobody placed there.</summary>
    /// <param name="resolve">Resolves a show.</param>
    public Show Write(Func<Show, ResolvedShow> resolve)
    {
        WantContents();
        foreach (var (slot, sink) in wiring.FreeRoutes)
        {
            routes.Want(sink, slot);
        }

        var input = problem.Show.Document;
        var written = streams.Write();
        for (var round = 0; ; round++)
        {
            var show = input with { Patch = input.Patch with { Streams = written, Routes = routes.Write() } };
            if (round > 4 || !leftovers.Clear(resolve(show)))
            {
                Cleared.Sort();
                return show;
            }
        }
    }

    private void WantDelivery(Delivery delivery)
    {
        for (var position = 0; position < delivery.Width; position++)
        {
            var sink = delivery.Sink + position;
            if (delivery.IsLocal)
            {
                routes.Want(sink, delivery.Source + position);
            }
            else if (problem.Show.Graph.FixedSource(new PointIndex(sink)) is { IsNone: false })
            {
                routes.Want(sink, routes.FactorySource(sink));
            }
            else
            {
                WantBlock(sink);
            }
        }
    }

    /// <summary>Routes the whole block that a sink with block routing belongs to.</summary>
    private void WantBlock(int sink)
    {
        var slot = problem.Show.Graph.FixedSource(new PointIndex(sink)) is null ? problem.Blocks.ReceiveSlot(sink) : -1;
        if (slot >= 0 && problem.Blocks.Find(slot, sink) is { } together)
        {
            for (var position = 0; position < together.Size; position++)
            {
                routes.Want(together.FirstSink + position, together.FirstSource + position);
            }
        }
    }

    private void WantContents()
    {
        var carried = wiring.Contents.ToDictionary(content => content.Slot, content => content.Source);
        foreach (var (slot, source) in wiring.Contents)
        {
            if (problem.Show.Graph.FixedSource(new PointIndex(slot)) is null)
            {
                routes.Want(slot, source);
            }
        }

        foreach (var id in wiring.UsedTransmit)
        {
            var block = problem.TransmitBlocks[id];
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                if (carried.TryGetValue(slot, out var source))
                {
                    routes.Want(slot, source);
                }
                else if (!block.IsCarrier && Array.IndexOf(wiring.Untouched, slot) < 0)
                {
                    routes.Silence(slot);
                }
            }
        }
    }
}
