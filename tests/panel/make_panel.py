"""Makes a panel of adults for the panel test: plain facts, one person a line.

usage: make_panel.py FOLDER_OF_PACKAGES BASE_FILE OUTPUT

Three open data sets that packages of Debian carry give age, sex, weight, height, pressure, haemoglobin, cancer,
the number of long illnesses and limits of daily life. A missing cell stays missing: it is a question nobody
answered. What no data set tells (symptoms, activity, which illness, falls) is drawn with the seed below at the
shares below, which are common practice, no source; all else is answered as in the base file.
"""
import json
import os
import random
import sys

from read_rdata import data_frame

SEED = 20261125
DAY = (2026, 11, 25)

# Shares of adults of 40 and over; common practice, no source. Under 40 a third of each.
SYMPTOMS = {"chestDiscomfort": .06, "breathlessMildEffort": .09, "dizzinessOrFaint": .08, "breathlessLyingDown": .04,
            "ankleSwelling": .08, "palpitations": .06, "legPainWalking": .05, "heartMurmur": .05, "unusualFatigue": .09}
ILLNESS = {"infarction": .05, "otherHeart": .07, "diabetes": .11, "kidney": .04, "copd": .06, "arthritis": .2}
REGULARLY_ACTIVE, HYPERTENSION, FELL, NOT_SURE = .35, .3, .2, .02
# Hearts of which the form asks what an exercise test showed.
EXERCISE_TESTED = {"angina", "infarction", "stentOrBypass", "heartFailure", "otherRhythm", "valveDisease", "cardiomyopathy", "congenital"}
# The seven long illnesses that the older people's survey counts; the gall bladder changes nothing here.
COUNTED = ["cancer", "infarction", "gallBladder", "copd", "arthritis", "diabetes", "otherHeart"]


def with_illnesses(person, names, draw):
    heart = [name for name in ("infarction", "otherHeart") if name in names]
    if heart:
        person["heartConditions"] = heart
        person.pop("familySuddenDeath", None)
    if "infarction" in names:
        person.update(heartEventDate="2022", didHeartRehab=draw.random() < .4, leftMainOrVentricle=False)
    if "otherHeart" in names:
        person["hadChestOpened"] = False
    if "diabetes" in names:
        person.update(hasDiabetes=True, diabetesType="type2", thirstyOrDry=False, hypoRecent=False, hypoUnaware=False,
                      eyeDamageTold=draw.random() < .1, eyeTreatedRecently=False, eyeNewSpots=False,
                      eyeChecked=draw.random() < .7, footNumbness=draw.random() < .2, footDeformity=False,
                      footWound=draw.random() < .01, footHotSwollen=False, autonomicNeuropathy=False)
        if person["eyeChecked"]:
            person["eyeCheckDate"] = "2026-02"
        if draw.random() < .7:
            person.update(takesAnyMedicine=True, medicineChanged=False,
                          medicine=[{"medicineName": draw.choice(["metformin", "gliclazide", "insulin glargine"]),
                                     "medicineReason": "diabetes"}])
    if "kidney" in names:
        person.update(kidneyDisease=True, onDialysis=False, potassiumHigh=False)
    if "copd" in names:
        person.update(lungConditions=["copd"], lungFlare=draw.random() < .05, collapsedLungRecent=False, usesOxygen=False,
                      saturationRangeAgreed=False)
    if "arthritis" in names:
        person.update(kneeOsteoarthritis=True, kneeOsteoarthritisSide="both", kneePainWorst=draw.randint(0, 8),
                      kneeHotOrLocked=False, kneeGivesWay=False, kneeNightPain=False)
    if "cancer" in names:
        person.update(cancerEver=True, cancerTreatmentNow=draw.random() < .1, cancerChestTreatment=False,
                      boneMetastases=False, lymphoedema=False)
        if person["cancerTreatmentNow"]:
            person.update(cancerTreatments=["hormone"], cancerLine=False)


def drawn(person, age, names, draw):
    part = 1 if age >= 40 else 1 / 3
    if names is None:
        names = [name for name, share in ILLNESS.items() if draw.random() < share * part]
    with_illnesses(person, names, draw)
    person["knownHypertension"] = draw.random() < HYPERTENSION * part
    for symptom, share in SYMPTOMS.items():
        if draw.random() >= share * part:
            continue
        if draw.random() < NOT_SURE:
            person[symptom] = {"unknown": "notSure"}
            continue
        person.update({symptom: True, symptom + "New": draw.random() < .2, symptom + "Explained": draw.random() < .6,
                       symptom + "Unchanged": True})
        if symptom == "chestDiscomfort":
            person["chestDiscomfortExertional"] = draw.random() < .3
        if symptom == "dizzinessOrFaint":
            person.update(faintedDuringEffort=False, dizzyOnStanding=draw.random() < .5)
    if draw.random() >= REGULARLY_ACTIVE:
        person.update(activityDaysPerWeek=draw.randint(1, 3), activityMinutesPerDay=draw.choice([10, 15, 20, 25]),
                      activityMonths=draw.randint(0, 6), activityIsModerate=draw.random() < .4)
    if age >= 65 and draw.random() < FELL:
        person.update(fellLastYear=True, fallsLastYear=draw.choice([1, 1, 2, 3]), fallInjury=draw.random() < .3,
                      fallCouldNotRise=False, fallBlackout=False, fallLastMonth=draw.random() < .2, frailTired=False, frailStairs=False,
                      frailWalk=False, frailIllnesses=False, frailWeightLoss=False)
        if person["fallLastMonth"]:
            person["fallCheckedSince"] = True


def started(base, age, sex):
    person = json.loads(json.dumps(base))
    # Nobody in the data was measured today: readings come from the data or are missing.
    for measured in ("bloodPressureReading", "bodyWeight", "bodyHeight", "chairStandCount", "chairStandUsedArms",
                     "upAndGoTime", "balanceTandemTime", "restingHeartRate", "pulseIrregularNew"):
        person.pop(measured, None)
    person["birthDate"] = "%04d-05" % (DAY[0] - age)
    person["sex"] = sex
    if sex == "male" or age > 55:
        person["pregnancyCouldApply"] = False
    return person


def as_asked(person):
    """Without the base file's answers to questions that this person is not asked."""
    def says(*names):
        return any(person.get(name) is True for name in names)
    if not EXERCISE_TESTED.intersection(person["heartConditions"]):
        person.pop("exerciseTestBad", None)
    if not says("takesAnyMedicine"):
        person.pop("bloodSaltsOff", None)
    if not (says("fellLastYear", "feelsUnsteady", "worriesAboutFalling", "usesWalkingAid", "hasDiabetes", "kidneyDisease", *SYMPTOMS) or
            person["heartConditions"] != ["none"] or person["lungConditions"] != ["none"]):
        person.pop("frailStairs", None)
    return person


def reading(systolic, diastolic):
    return [{"readingSystolic": "%d mm[Hg]" % systolic, "readingDiastolic": "%d mm[Hg]" % diastolic}]


def nutrition_survey(folder, base, draw):
    data = data_frame(os.path.join(folder, "hexbin/data/NHANES.rda"), "NHANES")
    for i, age in enumerate(data["Age"]):
        person = started(base, int(age), "male" if data["Sex"][i] == "M" else "female")
        weight, bmi = data["Weight"][i], data["BMI"][i]
        person["bodyWeight"] = "%.1f kg" % weight
        if bmi is not None:
            person["bodyHeight"] = "%.0f cm" % (100 * (weight / bmi) ** .5)
        drawn(person, age, None, draw)
        if data["Cancer.Incidence"][i] == "Yes":
            with_illnesses(person, ["cancer"], draw)
            if person["cancerTreatmentNow"] and data["Hemoglobin"][i] is not None:
                person["haemoglobin"] = "%.1f g/dL" % data["Hemoglobin"][i]
        yield as_asked(person)


def heart_study(folder, base, draw):
    data = data_frame(os.path.join(folder, "epitools/data/wcgs.rda"), "wcgs")
    for i, age in enumerate(data["age0"]):
        person = started(base, age, "male")
        person["bodyWeight"] = "%d [lb_av]" % data["weight0"][i]
        person["bodyHeight"] = "%d [in_i]" % data["height0"][i]
        person["bloodPressureReading"] = reading(data["sbp0"][i], data["dbp0"][i])
        drawn(person, age, None, draw)
        yield as_asked(person)


def older_people(folder, base, draw):
    data = data_frame(os.path.join(folder, "AER/data/NMES1988.rda"), "NMES1988")
    for i, decades in enumerate(data["age"]):
        age = int(round(decades * 10))
        person = started(base, age, data["gender"][i])
        drawn(person, age, draw.sample(COUNTED, min(data["chronic"][i], len(COUNTED))), draw)
        if data["adl"][i] == "limited":
            person.update(usesWalkingAid=True, frailTired=False, frailStairs=True, frailWalk=True, frailIllnesses=False,
                          frailWeightLoss=False)
        yield as_asked(person)


def main(folder, base_file, output):
    draw = random.Random(SEED)
    with open(base_file) as file:
        base = json.load(file)["facts"]
    people = [person for survey in (nutrition_survey, heart_study, older_people) for person in survey(folder, base, draw)]
    draw.shuffle(people)
    with open(output + ".part", "w") as file:
        for person in people:
            file.write(json.dumps(person, separators=(",", ":")) + "\n")
    os.replace(output + ".part", output)
    print("%d adults in the panel" % len(people))


if __name__ == "__main__":
    main(*sys.argv[1:])
