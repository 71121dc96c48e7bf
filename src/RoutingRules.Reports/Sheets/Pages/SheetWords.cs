using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>The words of sheets.</summary>
internal static class SheetWords
{
    public const string Banner = "Mute or turn down amplifiers before you change patch, clock or phantom power. Bring them back slowly.";

    /// <summary>Sentences for every page. The 100 dB figure is that of the WHO standard for safe listening venues and events (2022).</summary>
    public static ValueList<string> Cautions { get; } =
    [
        Banner,
        "In-ear mixes come first, and limited: a technician listens on a pack at low level before a performer wears it.",
        "Bring up one output at a time, from low level. Never unmute everything at once.",
        "Hearing: the WHO venue standard (2022) allows at most 100 dB LAeq over 15 minutes. Local rules apply as well and may be stricter.",
        "Rigging, mains power and earthing belong to licensed people under local codes. Never lift a protective earth against hum.",
        "This sheet says what the document says, not what the room does. Check every line and every output.",
    ];

    /// <summary>What nobody may forget on a page that does not have all cautions.</summary>
    public const string CautionInShort = "Mute amplifiers before any change. In-ears: a technician hears them first, low. More: first page of this hand-out.";

    public static string Half(string name, int width, int position) => width < 2 ? name : name + (position == 0 ? " L" : " R");

    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    public static string ViewNote(SheetView view) =>
        (
            view == SheetView.House
                ? "Sides as the audience sees them (house): house left = stage right, house right = stage left."
                : "Sides as the performers see them (stage): stage right = house left, stage left = house right."
        ) + " L and R of a pair are its first and second channel.";

    public static string? Side(ZoneSide side, SheetView view) =>
        (side, view) switch
        {
            (ZoneSide.HouseLeft, SheetView.House) => "house left",
            (ZoneSide.HouseRight, SheetView.House) => "house right",
            (ZoneSide.HouseLeft, _) => "stage right",
            (ZoneSide.HouseRight, _) => "stage left",
            (ZoneSide.Centre, _) => "centre",
            _ => null,
        };

    public static string? Zone(Zone? zone, SheetView view)
    {
        if (zone is null)
        {
            return null;
        }

        var name = zone.Name ?? zone.Id.Value;
        var side = Side(zone.Side, view);
        return side is null || string.Equals(name, side, StringComparison.OrdinalIgnoreCase) ? name : $"{name} ({side})";
    }

    public static string Mark(SheetMark mark) =>
        mark switch
        {
            SheetMark.Dead => "DEAD",
            SheetMark.Reserved => "RESERVED",
            SheetMark.InEar => "IN-EAR",
            SheetMark.Pinned => "PINNED",
            SheetMark.NoSignal => "NO SIGNAL",
            SheetMark.NotAsked => "NOT ASKED FOR",
            _ => "LOOP",
        };

    public static string Phantom(SheetPhantom phantom) =>
        (phantom.IsOn, phantom.Need, phantom.IsSupplied) switch
        {
            (true, PhantomNeed.Forbidden, _) => "ON, must be OFF",
            (true, _, false) => "ON, but none here",
            (true, _, _) => "ON",
            (false, PhantomNeed.Required, _) => "OFF, must be ON",
            (false, _, _) => "off",
            (null, PhantomNeed.Required, false) => "needs ON, none here",
            (null, PhantomNeed.Required, _) => "switch ON",
            (null, PhantomNeed.Forbidden, _) => "keep OFF",
            _ => "",
        };

    public static string Hop(SheetHop hop) =>
        hop.Kind switch
        {
            HopKind.Stream => string.Create(CultureInfo.InvariantCulture, $"stream {hop.Id} ch {hop.Channel}, {hop.At.Here}"),
            HopKind.Carrier => $"link {hop.Id}, {hop.At.Here}",
            _ => $"cable to {hop.At}",
        };

    /// <summary>Kind, length and speed of a network cable; null when nothing was said.</summary>
    public static string? Cable(Link link)
    {
        var parts = new List<string>();
        if (link.Medium is { } medium)
        {
            parts.Add(medium.Value);
        }

        if (link.LengthMetres is { } metres)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{metres} m"));
        }

        if (link.SpeedMbps is { } speed)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{speed} Mbit/s"));
        }

        return parts.Count == 0 ? null : string.Join(", ", parts);
    }

    public static string Megabits(double bits) => string.Create(CultureInfo.InvariantCulture, $"{bits / 1_000_000:0.0} Mbit/s");

    public static string Change(SheetChange change) => change.Kind == SheetChangeKind.New ? "NEW" : $"CHANGED, was: {change.Was}";

    public static string View(SheetView view) => view == SheetView.House ? "house view" : "stage view";

    /// <summary>The place, with channels in short: they are read all day.</summary>
    public static string Short(SheetPlace place) => place.Group.Value == "channel" ? $"{place.DeviceLabel} ch {place.Mark}" : place.ToString();

    public static string Plug(SheetPlace place) =>
        place.Connector == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"plug {place.Connector}, {Ordinal(place.ConnectorChannel)} channel");

    private static string Ordinal(int number) =>
        number switch
        {
            1 => "1st",
            2 => "2nd",
            3 => "3rd",
            _ => Number(number) + "th",
        };

    /// <summary>For example <c>1-4, 7</c>.</summary>
    public static string Runs(IEnumerable<int> numbers)
    {
        var runs = new List<NumberRange>();
        foreach (var number in numbers)
        {
            if (runs.Count > 0 && runs[^1].Last + 1 == number)
            {
                runs[^1] = new NumberRange(runs[^1].First, number);
            }
            else
            {
                runs.Add(new NumberRange(number, number));
            }
        }

        return string.Join(", ", runs);
    }

    /// <summary>For example <c>SR box or SL box</c>; "nowhere" for an empty list.</summary>
    public static string Any(IEnumerable<string> names) => names.ToArray() is { Length: > 0 } some ? string.Join(" or ", some) : "nowhere";

    public static string Why(ConnectionState state) =>
        state switch
        {
            ConnectionState.UnknownReference => "it names something that is not in the rig",
            ConnectionState.OutOfRange => "it names a number beyond the last one of its group",
            ConnectionState.WidthMismatch => "its two ends are not equally wide",
            ConnectionState.WrongKind => "one end is of a kind that cannot be there",
            ConnectionState.WrongDevice => "its ends must be on one device for a route, on two for a link",
            _ => "",
        };

    public static string How(FeedRole role, bool isInEar, string? person, bool? limiter)
    {
        if (isInEar)
        {
            return $"A technician first, low; then {person ?? "the performer"}. "
                + (
                    limiter == true ? "Limiter declared."
                    : limiter == false ? "NO LIMITER: set one first."
                    : "No limiter declared: set one first."
                );
        }

        if (role == FeedRole.Evacuation)
        {
            return "Never test without the venue's agreement.";
        }

        return IsLoudspeaker(role) ? "Open this output alone, from low level." : "Send low level and ask the far end.";
    }

    private static bool IsLoudspeaker(FeedRole role) =>
        role == FeedRole.Main || role == FeedRole.Sub || role == FeedRole.Fill || role == FeedRole.Delay || role == FeedRole.Monitor;
}
