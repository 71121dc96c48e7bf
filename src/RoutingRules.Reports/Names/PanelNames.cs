using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Names;

/// <summary>What people call the devices and points of one or more shows: the label of the device and the mark printed on its panel.</summary>
/// <remarks>
/// Texts for people name points by their address, which is part of the format: <c>box-r/in/6, 9-10</c>. <see cref="In"/> finds these and writes them as they
/// stand on the rig. What is no address of a device and a group that exist stays as it is.
/// Characters of a label or a mark that could steer a terminal are written out. Immutable, thread safe.
/// </remarks>
public sealed class PanelNames
{
    private readonly Dictionary<string, DeviceNames> devices;
    private readonly NameStyle style;

    private PanelNames(NameStyle style, Dictionary<string, DeviceNames> devices)
    {
        this.style = style;
        this.devices = devices;
    }

    /// <summary>Names that change nothing: everything is called as the document calls it.</summary>
    public static PanelNames Ids { get; } = new(NameStyle.Ids, []);

    /// <summary>The names of the devices of shows; where two shows name one device differently, the last show counts.</summary>
    /// <param name="style">How they are written.</param>
    /// <param name="shows">The shows, in the order in which they are played.</param>
    /// <exception cref="ArgumentNullException"><paramref name="shows"/> is null.</exception>
    public static PanelNames Of(NameStyle style, params ReadOnlySpan<ResolvedShow> shows)
    {
        var devices = new Dictionary<string, DeviceNames>(StringComparer.Ordinal);
        foreach (var show in shows)
        {
            ArgumentNullException.ThrowIfNull(show);
            foreach (var device in show.Devices)
            {
                devices[device.Id.Value] = DeviceNames.Of(device);
            }
        }

        return style == NameStyle.Ids ? Ids : new PanelNames(style, devices);
    }

    /// <summary>The name of a device, without its id; the id where the rig has no such device or gives it no label.</summary>
    /// <param name="device">The device.</param>
    public string Device(Id<Device> device) => devices.TryGetValue(device.Value, out var names) ? names.Label : device.Value;

    /// <summary>A text with every address of a known point written as it stands on the rig.</summary>
    /// <param name="text">The text.</param>
    /// <param name="here">The device the reader stands at, whose name need not be said; null for none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public string In(string text, Id<Device>? here = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (devices.Count == 0 || !text.Contains('/', StringComparison.Ordinal))
        {
            return text;
        }

        StringBuilder? output = null;
        var told = new HashSet<string>(StringComparer.Ordinal);
        var copied = 0;
        foreach (var address in AddressScanner.Find(text))
        {
            if (!devices.TryGetValue(address.Device, out var names) || !names.Groups.TryGetValue(address.Group, out var group))
            {
                continue;
            }

            var written = text[address.Start..address.End];
            if (style == NameStyle.Both && !group.HasMarks && names.Label == address.Device)
            {
                continue;
            }

            output ??= new StringBuilder(text.Length * 2);
            output.Append(text, copied, address.Start - copied);
            if (here?.Value != address.Device)
            {
                output.Append(names.Label).Append(' ');
            }

            group.Append(output, text.AsSpan(address.Numbers, address.End - address.Numbers));
            if (style == NameStyle.Both && told.Add(written))
            {
                output.Append(" (").Append(written).Append(')');
            }

            copied = address.End;
        }

        return output is null ? text : output.Append(text, copied, text.Length - copied).ToString();
    }

    private sealed record DeviceNames(string Label, Dictionary<string, GroupNames> Groups)
    {
        public static DeviceNames Of(DeviceNode device)
        {
            var groups = new Dictionary<string, GroupNames>(StringComparer.Ordinal);
            foreach (var group in device.Groups)
            {
                groups[group.Model.Id.Value] = new GroupNames(group.Model);
            }

            return new DeviceNames(VisibleText.OfPlain(device.DisplayName), groups);
        }
    }
}
