namespace RoutingRules.Reports.Names;

/// <summary>How devices and points are called where a person reads.</summary>
public enum NameStyle
{
    /// <summary>By the label of the device and the mark on its panel: <c>SR box input B4</c>.</summary>
    Panel,

    /// <summary>As the document writes them: <c>box-r/in/20</c>.</summary>
    Ids,

    /// <summary>By label and mark, with what the document writes behind it the first time: <c>SR box input B4 (box-r/in/20)</c>.</summary>
    Both,
}
