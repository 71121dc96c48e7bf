namespace RoutingRules.Model;

/// <summary>What a feed is for.</summary>
/// <remarks>An open word: lower-case letters, digits and hyphens; the constants are those the engine knows, others are kept and passed on.</remarks>
public readonly record struct FeedRole
{
    /// <summary>Wraps a word.</summary>
    /// <exception cref="ArgumentException"><paramref name="value"/> is null or empty.</exception>
    public FeedRole(string value)
    {
        ArgumentException.ThrowIfNullOrEmpty(value);
        Value = value;
    }

    /// <summary>The word as written in documents; null only for <c>default</c>.</summary>
    public string Value { get; }

    /// <summary>The main loudspeakers.</summary>
    public static FeedRole Main => new("main");

    /// <summary>Subwoofers.</summary>
    public static FeedRole Sub => new("sub");

    /// <summary>Front, side or other fill loudspeakers.</summary>
    public static FeedRole Fill => new("fill");

    /// <summary>Delay loudspeakers.</summary>
    public static FeedRole Delay => new("delay");

    /// <summary>Loudspeaker monitors on stage.</summary>
    public static FeedRole Monitor => new("monitor");

    /// <summary>In-ear monitors.</summary>
    public static FeedRole InEar => new("in-ear");

    /// <summary>A recorder.</summary>
    public static FeedRole Record => new("record");

    /// <summary>A broadcast or stream.</summary>
    public static FeedRole Broadcast => new("broadcast");

    /// <summary>Hearing loop or other assistive listening.</summary>
    public static FeedRole Assistive => new("assistive");

    /// <summary>Talkback from a console position.</summary>
    public static FeedRole Talkback => new("talkback");

    /// <summary>Four-wire intercom.</summary>
    public static FeedRole Comms => new("comms");

    /// <summary>Click or cue track.</summary>
    public static FeedRole Click => new("click");

    /// <summary>Anything else.</summary>
    public static FeedRole Utility => new("utility");

    /// <summary>Evacuation or emergency announcements.</summary>
    public static FeedRole Evacuation => new("evacuation");

    /// <summary>The word.</summary>
    public override string ToString() => Value ?? "";
}
