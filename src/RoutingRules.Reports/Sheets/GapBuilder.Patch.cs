using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <content>Routes, streams, cables, links and marks that have no effect.</content>
internal sealed partial class GapBuilder
{
    private void AddPatch()
    {
        foreach (var stream in facts.Show.Streams)
        {
            AddState($"Stream {stream.Model.Id}", stream.State);
            foreach (var receiver in stream.Receivers)
            {
                AddState($"Stream {stream.Model.Id} to {facts.Address(receiver.Model.At)}", receiver.State);
            }

            AddUnreachable(stream);
        }

        foreach (var route in facts.Show.Routes)
        {
            AddState(Name(route.Model), route.State);
        }

        foreach (var idle in facts.Show.IdleRoutes)
        {
            Add(Name(facts.Show.Routes[idle.RouteIndex].Model), $"No effect at {facts.Place(idle.Sink)}: the device fixes what this point takes.");
        }

        foreach (var conflict in facts.Show.Conflicts)
        {
            Add(
                facts.Place(conflict.Sink).ToString(),
                $"Claimed twice: {Name(conflict.FirstKind, conflict.FirstIndex)} counts, {Name(conflict.OtherKind, conflict.OtherIndex)} does not. Keep one."
            );
        }

        foreach (var label in facts.Show.Document.Patch.Labels)
        {
            AddMissing($"Label \u201c{label.Text}\u201d", label.At);
        }

        foreach (var input in facts.Show.Document.Patch.Inputs)
        {
            AddMissing("Phantom and gain", input.At);
        }
    }

    private void AddRig()
    {
        foreach (var device in facts.Show.Devices)
        {
            if (device.Groups.Count == 0)
            {
                Add(device.DisplayName, $"Nothing is known of its connectors: the profile {device.Model.Profile} was not found or has none.");
            }
        }

        foreach (var cable in facts.Show.Cables)
        {
            AddState($"Cable {facts.Address(cable.Model.From)} to {facts.Address(cable.Model.To)}", cable.State);
        }

        foreach (var link in facts.Show.Links)
        {
            AddState($"Network cable {link.Model.Id}", link.State);
        }

        foreach (var dead in facts.Show.Document.Rig.Unavailable)
        {
            AddMissing("Dead points", dead.At);
        }

        foreach (var reserved in facts.Show.Document.Rig.Reserved)
        {
            AddMissing("Reserved points", reserved.At);
        }
    }

    private void AddState(string subject, ConnectionState state)
    {
        if (state != ConnectionState.Connected)
        {
            Add(subject, $"Written but without effect: {SheetWords.Why(state)}.");
        }
    }

    private void AddMissing(string subject, PointRange at)
    {
        if (facts.Graph.Find(at, out _) != ConnectionState.Connected)
        {
            Add(subject, $"{at} is not in the rig: correct the address.");
        }
    }

    /// <summary>A stream counts in the graph also where no network cable leads; on the stage it does not.</summary>
    private void AddUnreachable(StreamNode stream)
    {
        var network = facts.Show.Network.IndexOf(stream.Model.Network);
        foreach (var receiver in stream.Receivers)
        {
            if (stream.From.IsNone || receiver.At.IsNone)
            {
                continue;
            }

            var from = facts.Graph.DeviceOf(stream.From);
            var to = facts.Graph.DeviceOf(receiver.At);
            if (network < 0)
            {
                Add($"Stream {stream.Model.Id}", $"It travels on the network {stream.Model.Network}, which is not in the rig.");
                return;
            }

            if (facts.Show.Network.Path(network, from, to) is null)
            {
                Add(
                    $"Stream {stream.Model.Id}",
                    $"It cannot get from {from.DisplayName} to {to.DisplayName}: no network cable leads there. What this sheet shows behind it will be silent."
                );
            }
        }
    }

    private string Name(Route route) =>
        route.From is { } from ? $"Route {facts.Address(from)} to {facts.Address(route.To)}" : $"Clearing of {facts.Address(route.To)}";

    private string Name(HopKind kind, int index) =>
        kind switch
        {
            HopKind.Stream => $"stream {facts.Show.Streams[index].Model.Id}",
            HopKind.Cable => $"the cable from {facts.Address(facts.Show.Cables[index].Model.From)}",
            HopKind.Carrier => $"link {facts.Show.Links[index].Model.Id}",
            HopKind.Route or HopKind.Cleared => $"route {(index + 1).ToString(CultureInfo.InvariantCulture)} of the list",
            _ => "the profile",
        };
}
