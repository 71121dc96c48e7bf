using System.Collections.Frozen;

namespace RoutingRules.Documents.Tables;

/// <summary>The words of an open list that the engine knows, and what else the trade writes for them.</summary>
/// <remarks>Other words are free to use; only those that are likely to mean a known one are doubtful. The other names are common practice, no source.</remarks>
internal sealed class KnownWords
{
    /// <summary>Words shorter than this are never taken for a slip of another: too many short words lie a letter apart.</summary>
    private const int ShortestSlip = 3;

    private const int MaxForm = 64;

    private readonly string[] words;
    private readonly string[] forms;
    private readonly FrozenSet<string> known;
    private readonly Dictionary<string, string> byForm = new(StringComparer.Ordinal);

    private KnownWords(string[] words, params (string Word, string OtherNames)[] others)
    {
        this.words = words;
        forms = Array.ConvertAll(words, Form);
        known = words.ToFrozenSet(StringComparer.Ordinal);
        for (var i = 0; i < words.Length; i++)
        {
            byForm.Add(forms[i], words[i]);
        }

        foreach (var (word, names) in others)
        {
            foreach (var name in names.Split(' '))
            {
                byForm.Add(Form(name), word);
            }
        }
    }

    public static KnownWords Roles { get; } =
        new(
            ["main", "sub", "fill", "delay", "monitor", "in-ear", "record", "broadcast", "assistive", "talkback", "comms", "click", "utility", "evacuation"],
            ("main", "pa foh front-of-house house lr"),
            ("sub", "subwoofer sub-bass sub-low"),
            ("fill", "front-fill ff in-fill out-fill near-fill lip-fill"),
            ("delay", "dly delay-tower delay-line"),
            ("monitor", "mon wedge floor-wedge floor-monitor stage-monitor side-fill drum-fill"),
            ("in-ear", "iem ear ear-mix ear-monitor in-ear-monitor in-ear-mix"),
            ("record", "rec recorder recording multitrack"),
            ("broadcast", "bcast ob tv stream streaming live-stream webcast"),
            ("assistive", "hearing-loop induction-loop assistive-listening hearing-assist"),
            ("talkback", "tb talk"),
            ("comms", "intercom party-line four-wire"),
            ("click", "click-track metronome cue cue-track"),
            ("utility", "util misc other"),
            ("evacuation", "evac emergency voice-alarm")
        );

    /// <summary>Parts of a set. Left and right are those of the audience, so stage left is right.</summary>
    public static KnownWords Parts { get; } =
        new(
            ["left", "right", "centre", "center", "low", "mid", "high", "mono"],
            ("left", "l lt lft hl house-left stage-right sr"),
            ("right", "r rt rgt hr house-right stage-left sl"),
            ("centre", "c ctr cent")
        );

    public static KnownWords DeviceKinds { get; } =
        new(
            ["console", "stage-box", "amplifier", "processor", "recorder", "transmitter-rack", "receiver-rack", "split", "switch", "loudspeaker"],
            ("console", "desk mixer mixing-desk mixing-console"),
            ("stage-box", "box stage-rack io-box io-rack"),
            ("amplifier", "amp power-amp power-amplifier"),
            ("processor", "dsp system-processor loudspeaker-processor"),
            ("recorder", "player multitrack"),
            ("transmitter-rack", "transmitter iem iem-rack iem-transmitter in-ear in-ear-rack ear-rack"),
            ("receiver-rack", "receiver radio-rack rf-rack wireless-rack"),
            ("split", "splitter"),
            ("switch", "network-switch ethernet-switch"),
            ("loudspeaker", "speaker powered-loudspeaker powered-speaker active-loudspeaker active-speaker")
        );

    /// <summary>Copper of which nothing is said is taken as stranded, which reaches less far; a category above those known as the highest of them.</summary>
    public static KnownWords Media { get; } =
        new(
            [
                "copper-solid",
                "copper-stranded",
                "cat5e",
                "cat6",
                "cat6a",
                "fibre-multimode",
                "om1",
                "om2",
                "om3",
                "om4",
                "om5",
                "fibre-singlemode",
                "os1",
                "os2",
                "coax",
            ],
            ("copper-solid", "solid installed-copper"),
            ("copper-stranded", "stranded copper utp ftp stp twisted-pair patch-cord patch-cable"),
            ("cat5e", "cat5"),
            ("cat6a", "cat7 cat7a cat8"),
            ("fibre-multimode", "fibre fiber optical multimode mm"),
            ("fibre-singlemode", "singlemode monomode sm"),
            ("coax", "coaxial")
        );

    public static KnownWords Transports { get; } =
        new(
            ["rtp-l24", "rtp-l16", "avtp-class-a", "avtp-class-b", "point-to-point"],
            ("rtp-l24", "rtp l24 aes67 st2110 st2110-30 2110-30"),
            ("rtp-l16", "l16"),
            ("avtp-class-a", "avb avtp class-a"),
            ("avtp-class-b", "class-b"),
            ("point-to-point", "aes10 madi multicore p2p")
        );

    public static KnownWords Levels { get; } =
        new(
            ["mic", "line", "speaker", "aes3", "headphone"],
            ("mic", "microphone mic-level"),
            ("line", "line-level"),
            ("speaker", "loudspeaker spk speaker-level"),
            ("aes3", "aes aes-ebu aes-3id"),
            ("headphone", "phones hp earphone")
        );

    /// <summary>Connectors of inputs and of everything that is no output: a plain three-pin connector has sockets there.</summary>
    public static KnownWords InputConnectors { get; } = Connectors("xlr-socket");

    /// <summary>Connectors of outputs: a plain three-pin connector has pins there.</summary>
    public static KnownWords OutputConnectors { get; } = Connectors("xlr-pins");

    /// <summary>
    /// The known word that a word probably stands for: another name of it, a plural, another way to write it, or a slip of one letter. Null for known words and
    /// for words of their own.
    /// </summary>
    public string? Meant(string word)
    {
        if (known.Contains(word))
        {
            return null;
        }

        var form = Form(word);
        if (
            byForm.TryGetValue(form, out var meant)
            || (form.EndsWith('s') && byForm.TryGetValue(form[..^1], out meant))
            || byForm.TryGetValue($"{form}s", out meant)
        )
        {
            return meant;
        }

        for (var i = 0; i < words.Length; i++)
        {
            if (form.Length >= ShortestSlip && Math.Abs(form.Length - forms[i].Length) <= 1 && Spelling.Edits(form, forms[i]) == 1)
            {
                return words[i];
            }
        }

        return null;
    }

    private static KnownWords Connectors(string plain) =>
        new(
            ["xlr-socket", "xlr-pins", "jack", "speaker-connector", "rj45", "bnc", "fibre", "multipin"],
            (plain, "xlr xlr3"),
            ("xlr-socket", "xlr-female female-xlr xlr-f xlrf3"),
            ("xlr-pins", "xlr-pin xlr-male male-xlr xlr-m xlrm3"),
            ("jack", "trs ts quarter-inch 6.35 6.35mm"),
            ("speaker-connector", "speaker loudspeaker spk"),
            ("rj45", "8p8c ethernet"),
            ("bnc", "coax coaxial"),
            ("fibre", "fiber optical"),
            ("multipin", "multicore loom d-sub db25")
        );

    /// <summary>Letters and digits only, in lower case.</summary>
    private static string Form(string word)
    {
        Span<char> form = stackalloc char[Math.Min(word.Length, MaxForm)];
        var length = 0;
        foreach (var letter in word)
        {
            if (length < form.Length && char.IsLetterOrDigit(letter))
            {
                form[length++] = char.ToLowerInvariant(letter);
            }
        }

        return new string(form[..length]);
    }
}
