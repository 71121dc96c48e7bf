using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>Carries the steps of a plan out on a show.</summary>
internal static class FallbackSteps
{
    public static Show Apply(Show show, ValueList<FallbackStep> steps)
    {
        var cables = new List<Cable>(show.Rig.Cables);
        var streams = new List<AudioStream>(show.Patch.Streams);
        var inputs = new List<InputSettings>(show.Patch.Inputs);
        var routes = new List<Route>(show.Patch.Routes);
        foreach (var step in steps)
        {
            if (step.Kind == FallbackStepKind.Pull)
            {
                PullCables(cables, step.From!.Value);
            }
            else if (step.Kind == FallbackStepKind.Replug)
            {
                MoveCables(cables, step);
                MoveSettings(inputs, step);
            }
            else if (step.Kind == FallbackStepKind.Stream)
            {
                SetStream(streams, step);
            }
            else
            {
                SetRoute(routes, step.Route!);
            }
        }

        return show with
        {
            Rig = show.Rig with { Cables = cables.ToValueList() },
            Patch = show.Patch with { Streams = streams.ToValueList(), Routes = routes.ToValueList(), Inputs = inputs.ToValueList() },
        };
    }

    private static void SetStream(List<AudioStream> streams, FallbackStep step)
    {
        var at = streams.FindIndex(stream => stream.Id == step.StreamId);
        if (step.Stream is not { } stream)
        {
            streams.RemoveAt(at);
        }
        else if (at >= 0)
        {
            streams[at] = stream;
        }
        else
        {
            streams.Add(stream);
        }
    }

    /// <summary>Sets a route; others keep the sinks that are not its own.</summary>
    private static void SetRoute(List<Route> routes, Route route)
    {
        for (var i = routes.Count - 1; i >= 0; i--)
        {
            var known = routes[i];
            var first = Math.Max(known.To.First, route.To.First);
            var last = Math.Min(known.To.Last, route.To.Last);
            if (known.To.Device != route.To.Device || known.To.Group != route.To.Group || first > last)
            {
                continue;
            }

            routes.RemoveAt(i);
            if (last < known.To.Last)
            {
                routes.Insert(i, Piece(known, last + 1 - known.To.First, known.To.Width));
            }

            if (first > known.To.First)
            {
                routes.Insert(i, Piece(known, 0, first - known.To.First));
            }
        }

        routes.Add(route);
    }

    private static Route Piece(Route route, int from, int end) =>
        route with
        {
            From = route.From is { } source && source.Width == route.To.Width ? Piece(source, from, end) : route.From,
            To = Piece(route.To, from, end),
        };

    /// <summary>Plugs every cable that moves at the new place: at the position at which it was.</summary>
    private static void MoveCables(List<Cable> cables, FallbackStep step)
    {
        foreach (var sink in step.CableTo)
        {
            var from = step.From!.Value;
            var at = cables.FindIndex(cable =>
                Holds(cable.To, sink) && Holds(from, new Point(cable.From.Device, cable.From.Group, cable.From.First + sink.Number - cable.To.First))
            );
            if (at >= 0)
            {
                var cable = cables[at];
                var within = sink.Number - cable.To.First;
                Split(cables, at, within);
                cables.Add(
                    cable with
                    {
                        From = Single(step.To!.Value, cable.From.First + within - from.First),
                        To = new PointRange(sink.Device, sink.Group, sink.Number, sink.Number),
                    }
                );
            }
        }
    }

    /// <summary>Takes away every cable that starts at one of some outputs.</summary>
    private static void PullCables(List<Cable> cables, PointRange from)
    {
        for (var position = 0; position < from.Width; position++)
        {
            for (
                var at = cables.FindIndex(cable => Holds(cable.From, from[position]));
                at >= 0;
                at = cables.FindIndex(cable => Holds(cable.From, from[position]))
            )
            {
                Split(cables, at, from[position].Number - cables[at].From.First);
            }
        }
    }

    /// <summary>Takes one position out of a cable; what stands before and after it stays.</summary>
    private static void Split(List<Cable> cables, int at, int position)
    {
        var cable = cables[at];
        cables.RemoveAt(at);
        if (position + 1 < Math.Min(cable.From.Width, cable.To.Width))
        {
            cables.Insert(at, cable with { From = Piece(cable.From, position + 1, cable.From.Width), To = Piece(cable.To, position + 1, cable.To.Width) });
        }

        if (position > 0)
        {
            cables.Insert(at, cable with { From = Piece(cable.From, 0, position), To = Piece(cable.To, 0, position) });
        }
    }

    private static void MoveSettings(List<InputSettings> inputs, FallbackStep step)
    {
        for (var position = 0; position < step.From!.Value.Width; position++)
        {
            var to = Single(step.To!.Value, position);
            if (inputs.Find(setting => Holds(setting.At, step.From.Value[position])) is { } known && !inputs.Exists(setting => Holds(setting.At, to[0])))
            {
                inputs.Add(known with { At = to });
            }
        }
    }

    private static bool Holds(PointRange range, Point point) =>
        range.Device == point.Device && range.Group == point.Group && point.Number >= range.First && point.Number <= range.Last;

    private static PointRange Single(PointRange range, int position) => Piece(range, position, position + 1);

    private static PointRange Piece(PointRange range, int from, int end) => new(range.Device, range.Group, range.First + from, range.First + end - 1);
}
