namespace RoutingRules.Rules;

/// <summary>Parts of the model that a rule reads; declared in its descriptor and checked when it runs.</summary>
[Flags]
public enum ModelSlices
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Title, venue, date and other members of the document.</summary>
    Document = 1,

    /// <summary>Devices, profiles, zones, dead and reserved points.</summary>
    Devices = 2,

    /// <summary>Routes and what every sink carries.</summary>
    Routes = 4,

    /// <summary>Streams.</summary>
    Streams = 8,

    /// <summary>Feeds.</summary>
    Feeds = 16,

    /// <summary>Lines and input settings.</summary>
    Lines = 32,

    /// <summary>Networks, links and clocks.</summary>
    Links = 64,

    /// <summary>Cables.</summary>
    Cables = 128,

    /// <summary>Labels.</summary>
    Labels = 256,

    /// <summary>Everything.</summary>
    All = 511,
}
