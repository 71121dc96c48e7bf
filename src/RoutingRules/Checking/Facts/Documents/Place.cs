using System.Globalization;
using RoutingRules.Model;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>A place in a show: the record it belongs to and the way there; texts are made only when a finding needs them.</summary>
/// <param name="Owner">The record of the model that a person would name.</param>
/// <param name="List">Pointer of the list the record stands in.</param>
/// <param name="Index">Position in the list, from 0.</param>
/// <param name="Member">Pointer from the record to a member.</param>
/// <param name="Item">Position in that member, or -1.</param>
/// <param name="Leaf">Pointer from there on.</param>
/// <param name="Part">Position in the leaf, or -1.</param>
internal readonly record struct Place(object Owner, string List, int Index, string Member = "", int Item = -1, string Leaf = "", int Part = -1)
{
    public string Pointer =>
        string.Create(CultureInfo.InvariantCulture, $"{List}/{Index}{Member}{(Item < 0 ? "" : $"/{Item}")}{Leaf}{(Part < 0 ? "" : $"/{Part}")}");

    /// <summary>The record and the member in words that stay when the document is reordered or relabelled; items of one list share them.</summary>
    public string Identity =>
        Owner switch
        {
            Feed feed => $"feed {feed.Id}",
            Line line => $"line {line.Id}",
            AudioStream stream => $"stream {stream.Id}",
            Route route => $"route {route.From?.ToString() ?? "null"} to {route.To}",
            Cable cable => $"cable {cable.From} to {cable.To}",
            Link link => $"link {link.Id}",
            Device device => $"device {device.Id}",
            Zone zone => $"zone {zone.Id}",
            Clock clock => $"clock {clock.Id}",
            Network network => $"network {network.Id}",
            InputSettings settings => $"inputs {settings.At}",
            PointLabel label => $"label {label.At}",
            UnavailablePoints dead => $"unavailable {dead.At}",
            ReservedPoints reserved => $"reserved {reserved.At}",
            _ => "document",
        }
        + Member
        + Leaf;

    public string Name =>
        Owner switch
        {
            Feed feed => $"feed '{feed.Name ?? feed.Id.Value}'",
            Line line => $"line '{line.Name ?? line.Id.Value}'",
            AudioStream stream => $"stream '{stream.Label ?? stream.Id.Value}'",
            Route { From: { } from } route => $"the route {from} to {route.To}",
            Route route => $"the route that clears {route.To}",
            Cable cable => $"the cable {cable.From} to {cable.To}",
            Link link => $"link '{link.Id}'",
            Device device => $"device '{device.Label ?? device.Id.Value}'",
            Zone zone => $"zone '{zone.Name ?? zone.Id.Value}'",
            Clock clock => $"clock '{clock.Id}'",
            Network network => $"network '{network.Name ?? network.Id.Value}'",
            InputSettings settings => $"the input settings of {settings.At}",
            PointLabel label => $"the label '{label.Text}' at {label.At}",
            UnavailablePoints dead => $"the dead points {dead.At}",
            ReservedPoints reserved => $"the reserved points {reserved.At}",
            _ => "the document",
        };
}
