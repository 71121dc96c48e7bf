namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A list of a sheet for programs and spreadsheets.</summary>
public enum SheetListKind
{
    /// <summary>Lines by channel, with where they enter and what they need.</summary>
    Inputs,

    /// <summary>Outputs by device, free ones as well.</summary>
    Outputs,

    /// <summary>Lines in walking order.</summary>
    Walk,

    /// <summary>Mixes in the order of the output check.</summary>
    Mixes,

    /// <summary>Who listens to what.</summary>
    Packs,

    /// <summary>Streams of all networks.</summary>
    Streams,

    /// <summary>Links of all networks with their load.</summary>
    Links,

    /// <summary>What is not patched yet.</summary>
    Gaps,

    /// <summary>What differs from the older revision.</summary>
    Changes,

    /// <summary>What is loaded into the truck, with spares.</summary>
    Kit,

    /// <summary>Devices by supply.</summary>
    Power,
}
