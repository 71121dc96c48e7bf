namespace RoutingRules.Assignment.Explaining;

/// <summary>Why a demand does not have a place.</summary>
public enum RefusalCause
{
    /// <summary>The place does not work.</summary>
    Dead,

    /// <summary>The place is reserved.</summary>
    Reserved,

    /// <summary>The options exclude the place.</summary>
    Excluded,

    /// <summary>Other demands stand there, or the document gives the place to them.</summary>
    Taken,

    /// <summary>No route, stream or cable can connect the place.</summary>
    NoPath,

    /// <summary>With all else as it is, its block would bring a signal to outputs that must be silent or carry something else, or no block is left.</summary>
    BlockClash,

    /// <summary>With all else as it is, a device would send or receive more streams than it can.</summary>
    StreamLimit,

    /// <summary>With all else as it is, its stream would take more of a link than may be reserved.</summary>
    LinkFull,

    /// <summary>It would arrive later than the options allow.</summary>
    Late,

    /// <summary>It has to stay free as a spare.</summary>
    Spare,

    /// <summary>It would come too close to a demand it must be kept apart from.</summary>
    Separation,

    /// <summary>It is possible with all else as it is, but worse.</summary>
    Worse,

    /// <summary>It is possible and just as good.</summary>
    EquallyGood,

    /// <summary>It is possible and would even be better; the search ended before it was found.</summary>
    SearchEnded,

    /// <summary>There were more places than are looked at one by one, or more work than is done for one.</summary>
    NotLookedAt,

    /// <summary>The device stands elsewhere than the feed or line allows.</summary>
    NotAllowed,

    /// <summary>The device has no free point of the kind and width that is needed.</summary>
    WrongKind,

    /// <summary>Loudspeakers would play it there, and it is talkback, click or comms.</summary>
    Overheard,
}
