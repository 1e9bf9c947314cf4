namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Parts of the definitions that can be left out one by one; each says what stands in its place then.</summary>
[Flags]
public enum OracleDefinitions
{
    None = 0,

    /// <summary>Planets and double stars bear an exit pupil of 0.5 mm; else they get no more than the rest.</summary>
    SmallExitPupil = 1 << 0,

    /// <summary>A zone that no interest names weighs at least 0.45; else just half.</summary>
    LeastWeight = 1 << 1,

    /// <summary>A view may lie a tenth above the range; else a quarter, as below it.</summary>
    HighGrace = 1 << 2,

    /// <summary>An eyepiece being bought has at least 5 mm of eye relief; else any.</summary>
    BoughtEyeRelief = 1 << 3,

    /// <summary>Spectacles come off at small exit pupils; else never.</summary>
    SpectaclesOff = 1 << 4,

    /// <summary>An eyepiece or zoom suffers from too steep a cone; else none does.</summary>
    SteepCone = 1 << 5,

    /// <summary>A Barlow suffers from too steep a cone; else none does.</summary>
    SteepConeOfBarlow = 1 << 6,

    /// <summary>Little more eye relief than needed is a drawback; else none.</summary>
    TightEyeRelief = 1 << 7,

    /// <summary>An apparent field under 50° is a drawback; else none.</summary>
    NarrowField = 1 << 8,

    /// <summary>An exit pupil wider than the observer's is a drawback; else none.</summary>
    WideExitPupil = 1 << 9,

    /// <summary>Who prefers wide fields or long eye relief has the quality bounded by them; else not.</summary>
    PreferredQuality = 1 << 10,

    /// <summary>Only an owned eyepiece bettered by a bought one is none that it repeats; else any two whose fields are apart.</summary>
    Upgrade = 1 << 11,

    /// <summary>Less power with hardly more sky overlaps; else not.</summary>
    LessPower = 1 << 12,

    /// <summary>A telescope that nothing serves stands aside; else it counts.</summary>
    Aside = 1 << 13,

    /// <summary>The largest step may be 1.15 times the least; else only the least.</summary>
    StepLeeway = 1 << 14,

    /// <summary>A wide view is wished; else not.</summary>
    Wish = 1 << 15,

    /// <summary>The wish comes after the largest step; else before it.</summary>
    WishAfterStep = 1 << 16,

    /// <summary>The mean excess may be 0.005 above the least; else only the least.</summary>
    ExcessLeeway = 1 << 17,

    /// <summary>Quality decides; else not.</summary>
    Quality = 1 << 18,

    /// <summary>Quality may be 0.03 under the greatest; else only the greatest.</summary>
    QualityLeeway = 1 << 19,

    /// <summary>Quality counts only where the owned kit serves nothing; else everywhere.</summary>
    QualityWhereNeeded = 1 << 20,

    /// <summary>Quality is shared out over at least half of the range; else over what needs something alone.</summary>
    QualityFloor = 1 << 21,

    /// <summary>A view's quality reaches as far as half the step that is allowed; else as far as it serves.</summary>
    QualityReach = 1 << 22,

    /// <summary>Light weight and parfocality decide where they are preferred; else not.</summary>
    LastPreference = 1 << 23,

    /// <summary>What is enough is not improved; else the least step counts as it is.</summary>
    EnoughStep = 1 << 24,

    /// <summary>An unknown apparent field follows the field stop; else it is 50°.</summary>
    AssumedField = 1 << 25,

    /// <summary>An unknown eye relief follows the focal length; else it is 10 mm.</summary>
    AssumedEyeRelief = 1 << 26,

    /// <summary>What is spare may be worth 0.005 of mean excess; else nothing.</summary>
    SpareExcess = 1 << 27,

    /// <summary>What is spare is worth hardly any comfort; else comfort is not asked for.</summary>
    SpareComfort = 1 << 28,

    /// <summary>What is spare gives no telescope its widest view; else that is not asked.</summary>
    SpareField = 1 << 29,

    /// <summary>The greatest loss of a path may be 0.05 above the least; else only the least.</summary>
    LossLeeway = 1 << 30,
}
