"""What is asked: words that tell an intent, and the names of languages, as people type them."""

from __future__ import annotations

import re

_WORDS = {
    "instead": "instead|substitut|replac|swap|in place of|without|बदले|की जगह|ऐवजी|பதில|మార|బదుల|বদলে|પછી ની જગ્યા|બદલે|en vez|en lugar|"
    "sustitu|reemplaz|à la place|remplac|بدل|کی جگہ|statt|ersetz|yerine|invece|em vez|вместо|ምትክ",
    "long": "how long|how many min|what time|minutes|how do i cook|how to cook|cook it|cook them|कितनी देर|कितने मिनट|कैसे पक|किती वेळ|"
    "எவ்வளவு நேரம்|எத்தனை நிமிட|ఎంత సేపు|ఎంతసేపు|ఎన్ని నిమిష|কতক্ষণ|কত মিনিট|કેટલી વાર|કેટલા મિનિટ|cuánto tiempo|cuanto tiempo|"
    "cuántos minutos|cómo se cocin|combien de temps|combien de minutes|cuire|كم دقيقة|كم من الوقت|مدة الطبخ|كيف أطبخ|کتنی دیر|"
    "کیسے پک|wie lange|kochen|ne kadar süre|kaç dakika|quanto tempo|сколько варить|сколько времени|ምን ያህል ጊዜ",
    "soak": "soak|भिगो|भिजव|ஊற|నానబె|ভিজ|ভেজা|પલાળ|remoj|tremp|نقع|أنقع|بھگو|einweich|ıslat|ammoll|замач|замоч|መዘፍዘፍ|ነክሮ",
    "water": "how much water|water|कितना पानी|पानी|पाणी|தண்ணீர|నీళ్|নীর|জল|পানি|પાણી|agua|d'eau|ماء|پانی|wasser|ne kadar su|acqua|воды|ውሃ",
    "name": "what do i ask for|how do i ask|what is it called|how do you say|called in|name in|क्या कहते|नाम|नाव|பெயர்|పేరు|নাম|નામ|"
    "cómo se dice|cómo se llama|como se dice|comment dit|comment s'appelle|ما اسم|اسمه|کیا کہتے|wie heißt|nasıl denir|как называется|ስሙ",
    "thanks": "thank|thanks|धन्यवाद|शुक्रिया|நன்றி|ధన్యవాద|ধন্যবাদ|આભાર|gracias|merci|شكرا|شکریہ|danke|teşekkür|grazie|спасибо|አመሰግናለሁ",
    "help": r"^(help|hello|hi|hey|नमस्ते|வணக்கம்|నమస్తే|নমস্কার|નમસ્તે|hola|bonjour|مرحبا|السلام عليكم|سلام|hallo|merhaba)\W*$",
}
PATTERNS = {name: re.compile(words, re.IGNORECASE) for name, words in _WORDS.items()}
# Languages by the names people give them.
LANGUAGES: dict[str, str] = {
    name: tag
    for tag, names in {
        "hi": "hindi हिन्दी हिंदी हिन्दी में", "ur": "urdu اردو", "ta": "tamil தமிழ் தமிழில்", "te": "telugu తెలుగు తెలుగులో",
        "bn": "bengali bangla বাংলা বাংলায়", "gu": "gujarati ગુજરાતી ગુજરાતીમાં", "mr": "marathi मराठी मराठीत", "pa": "punjabi ਪੰਜਾਬੀ",
        "kn": "kannada ಕನ್ನಡ", "ml": "malayalam മലയാളം", "ne": "nepali नेपाली", "si": "sinhala sinhalese සිංහල", "or": "odia oriya ଓଡ଼ିଆ",
        "as": "assamese অসমীয়া", "ar": "arabic العربية عربي بالعربية", "fa": "persian farsi فارسی", "tr": "turkish türkçe turkce",
        "es": "spanish español espanol", "pt": "portuguese português", "fr": "french français francais", "it": "italian italiano",
        "de": "german deutsch", "nl": "dutch nederlands", "am": "amharic አማርኛ በአማርኛ", "sw": "swahili kiswahili", "zh-Hans": "chinese mandarin 中文",
        "ja": "japanese 日本語", "ko": "korean 한국어", "th": "thai ไทย", "vi": "vietnamese", "id": "indonesian", "ms": "malay", "ru": "russian русский",
        "el": "greek ελληνικά", "he": "hebrew עברית", "en": "english", "hy": "armenian", "ka": "georgian", "uk": "ukrainian", "pl": "polish",
    }.items()
    for name in names.split()
    if name != "में"
}  # fmt: skip


def intents(text: str) -> tuple[str, ...]:
    """What a text asks, in a fixed order; empty where it asks nothing known."""
    return tuple(name for name, pattern in PATTERNS.items() if pattern.search(text))


def language(text: str) -> str:
    """The tag of a language named in a text, or nothing."""
    for word in re.findall(r"[^\s.,;:!?؟।]+", text.casefold()):
        if word in LANGUAGES:
            return LANGUAGES[word]
    return ""
