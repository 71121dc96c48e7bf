namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Something a crew must see at a point.</summary>
public enum SheetMark
{
    /// <summary>The document says that it does not work.</summary>
    Dead,

    /// <summary>The document keeps it for somebody else.</summary>
    Reserved,

    /// <summary>It carries an in-ear feed, or leads to somebody's ears.</summary>
    InEar,

    /// <summary>The document names this very point: do not move it.</summary>
    Pinned,

    /// <summary>It is named, labelled or cabled but carries nothing.</summary>
    NoSignal,

    /// <summary>It carries something that no feed or line asks for here.</summary>
    NotAsked,

    /// <summary>What feeds it comes back to it, so that no signal ever arrives.</summary>
    Loop,
}
