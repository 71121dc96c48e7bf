using RoutingRules.Model;

namespace RoutingRules.Reports.Riders;

/// <summary>What the words of riders mean. Common practice, no source.</summary>
internal static class RiderWords
{
    private static readonly string[] Direct = ["di", "d.i.", "d.i", "direct", "di-box"];

    private static readonly string[] LineLevel = ["line", "playback", "tracks", "track", "click", "laptop", "computer", "dj", "video", "mixer", "interface"];

    /// <summary>Instruments that are taken with a microphone where nothing else is said.</summary>
    private static readonly string[] Miked =
    [
        .. new[] { "kick", "bassdrum", "snare", "sn", "hat", "hihat", "hi-hat", "hh", "tom", "floor", "overhead", "overheads", "oh", "ride", "cymbal" },
        .. new[] { "drum", "drums", "percussion", "perc", "conga", "congas", "cajon", "bongo", "bongos", "djembe", "timbales", "guitar", "gtr", "amp", "cab" },
        .. new[] { "vocal", "vocals", "vox", "voc", "voice", "bv", "choir", "speech", "host", "mc", "talk", "fiddle", "violin", "viola", "cello", "accordion" },
        .. new[] { "flute", "whistle", "pipes", "clarinet", "sax", "saxophone", "trumpet", "trombone", "tuba", "horn", "horns", "brass", "harp", "banjo" },
        .. new[] { "mandolin", "ukulele", "grand", "audience", "ambience", "ambient", "harmonica", "bell", "bells", "vibraphone", "marimba" },
    ];

    /// <summary>Instruments that go through a direct box where nothing else is said.</summary>
    private static readonly string[] Boxed =
    [
        "bass",
        "keys",
        "keyboard",
        "keyboards",
        "synth",
        "organ",
        "rhodes",
        "piano",
        "acoustic",
        "sampler",
        "pad",
        "pads",
    ];

    private static readonly string[] Yes = ["x", "y", "yes", "on", "48", "48v", "+48", "+48v", "ok", "✓", "✔", "p48"];

    private static readonly string[] No = ["", "-", "–", "n", "no", "off", "0", "none"];

    private static readonly string[] Ears = ["iem", "iems", "ear", "ears", "in-ear", "in-ears", "inear", "inears", "pack"];

    private static readonly string[] Wedges = ["wedge", "wedges", "floor", "monitor", "monitors", "sidefill", "sidefills", "drumfill", "fill", "mon"];

    /// <summary>Kind and equipment of a line; null when nobody can say.</summary>
    public static (LineKind Kind, string Equipment)? KindOf(RiderInput input)
    {
        var (what, with) = (Parts(input.What), Parts(input.Equipment));
        return with.Length > 0
            ? Has(with, Direct)
                ? (LineKind.Microphone, input.Equipment.Length > 3 ? input.Equipment : "direct box")
                : Has(with, LineLevel)
                    ? (LineKind.Line, input.Equipment)
                    : (LineKind.Microphone, input.Equipment)
            : Has(what, Direct)
                ? (LineKind.Microphone, "direct box")
                : Has(what, LineLevel)
                    ? (LineKind.Line, "")
                    : Has(what, ["drum", "drums"])
                        ? (LineKind.Microphone, "")
                        : Has(what, Boxed)
                            ? (LineKind.Microphone, "direct box")
                            : Has(what, Miked)
                                ? (LineKind.Microphone, "")
                                : null;
    }

    /// <summary>What a line needs of phantom power as far as the band says so; null for a word nobody knows.</summary>
    public static PhantomNeed? PhantomOf(RiderInput input, LineKind kind)
    {
        var said = input.Phantom.Trim();
        return Array.Exists(Yes, word => word.Equals(said, StringComparison.OrdinalIgnoreCase)) ? PhantomNeed.Required
            : !Array.Exists(No, word => word.Equals(said, StringComparison.OrdinalIgnoreCase)) ? null
            : kind == LineKind.Line || Has(Parts(input.Equipment), ["ribbon"]) ? PhantomNeed.Forbidden
            : PhantomNeed.Either;
    }

    /// <summary>The role of a mix, and whether it is a pair of buses; null when nobody can say.</summary>
    public static (FeedRole Role, bool IsStereo)? MixOf(RiderMix mix)
    {
        var words = Parts($"{mix.System} {(mix.System.Length == 0 ? mix.Remarks : "")}");
        var isStereo = Has(words, ["stereo"]);
        return Has(words, Ears) ? (FeedRole.InEar, isStereo)
            : Has(words, Wedges) ? (FeedRole.Monitor, isStereo)
            : null;
    }

    private static bool Has(string[] parts, string[] words) => Array.Exists(parts, part => words.Contains(part, StringComparer.Ordinal));

    private static string[] Parts(string text) =>
        [
            .. text.ToLowerInvariant()
                .Split([' ', '\t', '/', ',', '(', ')', '+', ':', ';', '"', '\''], StringSplitOptions.RemoveEmptyEntries)
                .Select(part => part.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9') is { Length: > 0 } stem ? stem : part),
        ];
}
