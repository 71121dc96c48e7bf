using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Graph;

/// <content>Routes, streams, cables and links.</content>
internal sealed partial class GraphBuilder
{
    public RouteNode[] AddRoutes(ValueList<Route> routes)
    {
        var nodes = new RouteNode[routes.Count];
        for (var i = 0; i < nodes.Length; i++)
        {
            var state = ResolveRoute(routes[i], out var device, out var from, out var to);
            if (state == ConnectionState.Connected)
            {
                for (var position = 0; position < routes[i].To.Width; position++)
                {
                    AddRoute(device!, from < 0 ? -1 : from + position, to + position, i);
                }
            }

            nodes[i] = new RouteNode
            {
                Model = routes[i],
                Index = i,
                From = new PointIndex(from),
                To = new PointIndex(to),
                State = state,
            };
        }

        return nodes;
    }

    private ConnectionState ResolveRoute(Route route, out DeviceNode? device, out int from, out int to)
    {
        from = -1;
        var state = graph.Find(route.To, out device, out var toGroup, out to);
        if (state == ConnectionState.Connected && toGroup!.Kind is not (PortKind.Sink or PortKind.Output or PortKind.Transmit))
        {
            state = ConnectionState.WrongKind;
        }

        if (state != ConnectionState.Connected || route.From is not { } source)
        {
            return Keep(state, ref from, ref to);
        }

        state = graph.Find(source, out var fromDevice, out var fromGroup, out from);
        if (state == ConnectionState.Connected)
        {
            state =
                fromDevice != device ? ConnectionState.WrongDevice
                : fromGroup!.Kind is not (PortKind.Source or PortKind.Input or PortKind.Receive) ? ConnectionState.WrongKind
                : source.Width != route.To.Width ? ConnectionState.WidthMismatch
                : ConnectionState.Connected;
        }

        return Keep(state, ref from, ref to);
    }

    private static ConnectionState Keep(ConnectionState state, ref int from, ref int to)
    {
        if (state != ConnectionState.Connected)
        {
            from = to = -1;
        }

        return state;
    }

    private void AddRoute(DeviceNode device, int from, int sink, int route)
    {
        var local = sink - device.FirstPoint;
        var fixedSource = device.Type.FixedSource[local];
        if (fixedSource == CompiledProfile.NotFixed)
        {
            Claim(sink, from, from < 0 ? HopKind.Cleared : HopKind.Route, route);
            return;
        }

        var isOwn = fixedSource >= 0 && from == device.FirstPoint + fixedSource;
        if (device.Type.Clearable[local] && (isOwn || from < 0))
        {
            Claim(sink, from, isOwn ? HopKind.Route : HopKind.Cleared, route);
        }
        else if (isOwn)
        {
            return;
        }
        else
        {
            IdleRoutes.Add(new IdleRoute { Sink = new PointIndex(sink), RouteIndex = route });
        }
    }

    public StreamNode[] AddStreams(ValueList<AudioStream> streams)
    {
        var nodes = new StreamNode[streams.Count];
        for (var i = 0; i < nodes.Length; i++)
        {
            var stream = streams[i];
            var state = graph.Find(stream.From, out _, out var group, out var from);
            if (state == ConnectionState.Connected && (group!.Kind != PortKind.Transmit || group.IsCarrier))
            {
                state = ConnectionState.WrongKind;
                from = -1;
            }

            var receivers = new ReceiverNode[stream.To.Count];
            for (var r = 0; r < receivers.Length; r++)
            {
                receivers[r] = AddReceiver(stream, i, r, from);
            }

            nodes[i] = new StreamNode
            {
                Model = stream,
                Index = i,
                From = new PointIndex(from),
                State = state,
                Receivers = ValueList.Adopt(receivers),
            };
        }

        return nodes;
    }

    private ReceiverNode AddReceiver(AudioStream stream, int streamIndex, int index, int from)
    {
        var receiver = stream.To[index];
        var channels = receiver.Channels ?? new NumberRange(1, stream.From.Width);
        var state = graph.Find(receiver.At, out _, out var group, out var at);
        if (state == ConnectionState.Connected)
        {
            state =
                group!.Kind != PortKind.Receive || group.IsCarrier ? ConnectionState.WrongKind
                : channels.Last > stream.From.Width ? ConnectionState.OutOfRange
                : channels.Width != receiver.At.Width ? ConnectionState.WidthMismatch
                : ConnectionState.Connected;
        }

        if (state != ConnectionState.Connected)
        {
            at = -1;
        }
        else if (from >= 0)
        {
            for (var position = 0; position < channels.Width; position++)
            {
                Claim(at + position, from + channels.First - 1 + position, HopKind.Stream, streamIndex, index);
            }
        }

        return new ReceiverNode
        {
            Model = receiver,
            Index = index,
            At = new PointIndex(at),
            FirstChannel = channels.First,
            State = state,
        };
    }

    public CableNode[] AddCables(ValueList<Cable> cables)
    {
        var nodes = new CableNode[cables.Count];
        for (var i = 0; i < nodes.Length; i++)
        {
            var cable = cables[i];
            var state = graph.Find(cable.From, out _, out var fromGroup, out var from);
            var toState = graph.Find(cable.To, out _, out var toGroup, out var to);
            state =
                state != ConnectionState.Connected ? state
                : toState != ConnectionState.Connected ? toState
                : fromGroup!.Kind != PortKind.Output || toGroup!.Kind != PortKind.Input ? ConnectionState.WrongKind
                : cable.From.Width != cable.To.Width ? ConnectionState.WidthMismatch
                : ConnectionState.Connected;
            Keep(state, ref from, ref to);
            for (var position = 0; state == ConnectionState.Connected && position < cable.From.Width; position++)
            {
                Claim(to + position, from + position, HopKind.Cable, i);
            }

            nodes[i] = new CableNode
            {
                Model = cable,
                Index = i,
                From = new PointIndex(from),
                To = new PointIndex(to),
                State = state,
            };
        }

        return nodes;
    }

    public LinkNode[] AddLinks(ValueList<Link> links, ValueList<Network> networks)
    {
        var nodes = new LinkNode[links.Count];
        for (var i = 0; i < nodes.Length; i++)
        {
            var link = links[i];
            var state = graph.Find(link.From, out var fromDevice, out var fromGroup, out var from);
            var toState = graph.Find(link.To, out var toDevice, out var toGroup, out var to);
            var network = NetworkIndex(networks, link.Network);
            state =
                state != ConnectionState.Connected ? state
                : toState != ConnectionState.Connected ? toState
                : network < 0 ? ConnectionState.UnknownReference
                : fromGroup!.Kind != PortKind.Network || toGroup!.Kind != PortKind.Network ? ConnectionState.WrongKind
                : fromDevice == toDevice ? ConnectionState.WrongDevice
                : link.From.Width != 1 || link.To.Width != 1 ? ConnectionState.WidthMismatch
                : ConnectionState.Connected;
            Keep(state, ref from, ref to);
            if (state == ConnectionState.Connected)
            {
                Carry(fromDevice!, link.From, toDevice!, link.To, i);
                Carry(toDevice!, link.To, fromDevice!, link.From, i);
            }

            nodes[i] = new LinkNode
            {
                Model = link,
                Index = i,
                Network = network,
                From = new PointIndex(from),
                To = new PointIndex(to),
                State = state,
            };
        }

        return nodes;
    }

    /// <summary>Joins the carrier slots of a jack to those of the jack at the other end, slot by slot.</summary>
    private void Carry(DeviceNode sender, PointRange senderJack, DeviceNode receiver, PointRange receiverJack, int link)
    {
        if (
            CarrierGroup(sender, senderJack, PortKind.Transmit) is not { } transmit
            || CarrierGroup(receiver, receiverJack, PortKind.Receive) is not { } receive
        )
        {
            return;
        }

        for (var slot = 0; slot < transmit.Count && slot < receive.Count; slot++)
        {
            Claim(receiver.FirstPoint + receive.Offset + slot, sender.FirstPoint + transmit.Offset + slot, HopKind.Carrier, link);
        }
    }

    internal static GroupNode? CarrierGroup(DeviceNode device, PointRange jack, PortKind kind)
    {
        foreach (var group in device.Type.Groups)
        {
            if (group.Kind == kind && group.Model.Carrier is { } carrier && carrier.Group == jack.Group && carrier.First == jack.First)
            {
                return group;
            }
        }

        return null;
    }

    private static int NetworkIndex(ValueList<Network> networks, Id<Network> id)
    {
        for (var i = 0; i < networks.Count; i++)
        {
            if (networks[i].Id == id)
            {
                return i;
            }
        }

        return -1;
    }
}
